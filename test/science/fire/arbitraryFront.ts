import fc from 'fast-check'
import { type CoefficientKey, type Coefficients, coefficientTable } from '#science/coefficients.ts'
import { fuelTable } from '#science/fuel/table.ts'

/** Coefficients anywhere between their 5th and 95th percentile, one share a row. */
const anyCoefficients: fc.Arbitrary<Coefficients> = fc
  .array(fc.integer({ min: 0, max: 100 }), {
    minLength: Object.keys(coefficientTable).length,
    maxLength: Object.keys(coefficientTable).length,
  })
  .map(
    (shares) =>
      Object.fromEntries(
        (Object.keys(coefficientTable) as CoefficientKey[]).map((key, i) => {
          const { low, high } = coefficientTable[key]
          return [key, low + ((shares[i] ?? 0) / 100) * (high - low)]
        }),
      ) as Record<CoefficientKey, number>,
  )

const between = (low: number, high: number) =>
  fc.integer({ min: 0, max: 1000 }).map((share) => low + (share / 1000) * (high - low))

/** A front with any fuel of the table on any day. */
export const anyFront = fc.record({
  fuel: fc.constantFrom(...fuelTable.values()),
  moisture: between(0, 0.3),
  ambient: between(263, 313),
  preheated: between(0, 200),
  airPerFuel: between(1.3, 2.1),
  coefficients: anyCoefficients,
})
