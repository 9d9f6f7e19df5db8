import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mixtureViscosity } from '#science/gas/mixtureTransport.ts'
import { airViscosity } from '#science/gas/transport.ts'
import {
  RATIO_COLDEST,
  RATIO_HOTTEST,
  ratioToAir,
  viscosityRatio,
  viscosityRatioError,
} from '#science/gas/viscosityRatio.ts'

const share = (max: number) => fc.double({ min: 0, max, noNaN: true })
/** Gas of a front, steam of wet fuel included, or that gas burnt: the rest is nitrogen. */
const stoveGases = fc.oneof(
  fc.record({
    CO: share(0.2),
    H2: share(0.12),
    CH4: share(0.05),
    CO2: share(0.2),
    H2O: share(0.4),
    N2: fc.constant(0.4),
  }),
  fc.record({ CO2: share(0.2), H2O: share(0.3), O2: share(0.2), N2: fc.constant(0.7) }),
)
const temperatures = fc.double({ min: RATIO_COLDEST, max: RATIO_HOTTEST, noNaN: true })

describe('three numbers a composition in place of Wilke’s rule', () => {
  test('within 0.3 % for the gases of a stove, and never beyond the error they state', () => {
    let worst = 0
    fc.assert(
      fc.property(stoveGases, temperatures, (moles, temperature) => {
        const ratio = viscosityRatio(moles)
        const exact = mixtureViscosity(moles, temperature) / airViscosity(temperature)
        const miss = Math.abs(ratioToAir(ratio, temperature) / exact - 1)
        const error = viscosityRatioError(moles, ratio)
        worst = Math.max(worst, error)
        // Between two probes the curve may bulge a little.
        expect(miss).toBeLessThanOrEqual(error * 1.02 + 1e-5)
        expect(error).toBeLessThan(0.003)
      }),
      { numRuns: 300, seed: 20261125 },
    )
    console.log(`viscosity ratio: worst ${(100 * worst).toFixed(2)} % of 300 gases`)
  })

  test('air is 1, steam rises from half of air to more than it, and is the worst', () => {
    const air = viscosityRatio({ N2: 78, O2: 21, Ar: 1 })
    expect(ratioToAir(air, 700)).toBeCloseTo(1, 2)
    const steam = viscosityRatio({ H2O: 1 })
    expect(ratioToAir(steam, 400)).toBeLessThan(0.62)
    expect(ratioToAir(steam, 1700)).toBeGreaterThan(1)
    expect(viscosityRatioError({ H2O: 1 }, steam)).toBeLessThan(0.016)
  })
})
