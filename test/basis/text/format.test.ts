import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type QuantityKey, quantities, quantity } from '#basis/quantities.ts'
import {
  formatLength,
  formatQuantity,
  type InchDenominator,
  inchFraction,
  type LengthFormat,
} from '#basis/text/format.ts'
import { readLength } from '#basis/text/length.ts'
import { readQuantity } from '#basis/text/read.ts'
import { fromInches, fromMillimetres, type Metres } from '#basis/units.ts'
import { fromSi, unitBySymbol } from '#basis/unitTable.ts'

const reread = (text: string): number => {
  const outcome = readLength(text, 'x', 'clearance')
  if (!outcome.ok) throw new Error(`${text}: ${outcome.problems[0]?.code}`)
  return outcome.value
}

const denominators = fc.constantFrom<InchDenominator>(16, 32, 64)
const anyLength = fc.double({ min: -0.399, max: 0.399, noNaN: true }).map((x) => x as Metres)

describe('parse ∘ format is the identity', () => {
  test('millimetres on the grid of the digits written', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 6 }),
        fc.double({ min: -399, max: 399, noNaN: true }),
        (digits, mm) => {
          const value = fromMillimetres(Number(mm.toFixed(digits)))
          expect(reread(formatLength(value, { units: 'mm', digits }))).toBe(value === 0 ? 0 : value)
        },
      ),
      { numRuns: 2000 },
    )
  })

  test('inches on every sixty-fourth, and coarser fractions on their own marks', () => {
    for (const denominator of [16, 32, 64] as const)
      for (let n = -15 * denominator; n <= 15 * denominator; n++) {
        const value = fromInches(n / denominator)
        expect(reread(formatLength(value, { units: 'in', denominator }))).toBe(value === 0 ? 0 : value)
      }
  })

  test('both units always read back, as the millimetres written', () => {
    const digits = fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined })
    const wanted = fc.option(denominators, { nil: undefined })
    fc.assert(
      fc.property(anyLength, digits, wanted, (value, digits, denominator) => {
        const given = { ...(digits === undefined ? {} : { digits }) }
        const both: LengthFormat = {
          units: 'both',
          ...given,
          ...(denominator === undefined ? {} : { denominator }),
        }
        const mm: LengthFormat = { units: 'mm', ...given }
        expect(reread(formatLength(value, both))).toBe(reread(formatLength(value, mm)))
      }),
      { numRuns: 20_000 },
    )
  })

  test('quantities, to the digits shown, in every display unit', () => {
    for (const key of Object.keys(quantities) as QuantityKey[]) {
      if (key === 'residual') continue
      const row = quantity(key)
      for (const symbol of [undefined, ...row.displayUnits])
        fc.assert(
          fc.property(fc.double({ min: 0.02, max: 0.98, noNaN: true }), (part) => {
            const value = row.min + part * (row.max - row.min)
            // The nearest sixteenth to a length just under its limit may lie just over it.
            fc.pre(symbol !== 'in' || row.max <= 0.0254 || row.max - value > 0.0254 / 32)
            const text = formatQuantity(value, key, symbol)
            const outcome = readQuantity(text, 'x', key)
            if (!outcome.ok) throw new Error(`${key} ${value} → ${text}: ${outcome.problems[0]?.code}`)
            expect(formatQuantity(outcome.value, key, symbol)).toBe(text)
            const unit = unitBySymbol(row.kind, symbol ?? row.displayUnits[0] ?? '')
            const [shown, true_] = [outcome.value, value].map((x) =>
              unit === null ? x : fromSi(x, unit),
            ) as [number, number]
            const step =
              row.kind === 'count' ? 0.5 : row.kind === 'time' ? 0.5 : symbol === 'in' ? 1 / 32 : 0.05
            expect(Math.abs(shown - true_)).toBeLessThanOrEqual(
              row.kind === 'count' || row.kind === 'length' || row.kind === 'time'
                ? Math.max(step, 0.005 * Math.abs(true_)) * (1 + 1e-9)
                : 0.00501 * Math.abs(true_),
            )
          }),
          { numRuns: 60 },
        )
    }
  })
})

describe('inch fractions', () => {
  test('lie within half a mark, are reduced, and own up to the error', () => {
    fc.assert(
      fc.property(anyLength, denominators, (value, denominator) => {
        const mark = inchFraction(value, denominator)
        expect(Math.abs(mark.error)).toBeLessThanOrEqual((0.0254 / denominator / 2) * (1 + 1e-9))
        expect(mark.value - value).toBe(mark.error)
        expect(mark.numerator === 0 ? mark.denominator : mark.numerator % 2).toBe(1)
        expect(mark.numerator).toBeLessThan(mark.denominator)
        expect(reread(mark.text)).toBeCloseTo(mark.value, 15)
      }),
    )
  })

  test.each([
    [fromInches(6.1875), 16, '6 3/16 in (exact)'],
    [fromInches(1), 64, '1 in (exact)'],
    [fromMillimetres(16), 16, '5/8 in (0.13 mm small)'],
    [fromMillimetres(9.001), 16, '3/8 in (0.52 mm large)'],
    [fromMillimetres(9), 64, '23/64 in (0.13 mm large)'],
    [fromMillimetres(0), 16, '0 in (exact)'],
    [fromMillimetres(0.2), 16, '0 in (0.20 mm small)'],
    [fromMillimetres(25.3), 32, '1 in (0.10 mm large)'],
    [fromMillimetres(-40), 16, '-1 9/16 in (0.31 mm large)'],
  ] as const)('%d m to 1/%d: %s', (value, denominator, text) => {
    expect(formatLength(value, { units: 'in', denominator, showError: true })).toBe(text)
  })
})

test.each([
  [16, '16 mm (5/8 in)'],
  [15.875, '15.9 mm (5/8 in)'],
  [157.1625, '157.2 mm (6 3/16 in)'],
  [20, '20 mm (25/32 in)'],
  [0.2, '0.2 mm (0.008 in)'],
  [0, '0 mm (0 in)'],
  [-0.001, '0 mm (0 in)'],
  [0.24, '0.24 mm (0.009 in)'],
  [300.04, '300 mm (11 13/16 in)'],
])('%d mm in both units: %s', (mm, text) => {
  const shown = formatLength(fromMillimetres(mm), {
    units: 'both',
    ...(Math.abs(mm) === 20 ? { denominator: 16 } : {}),
  })
  expect(shown).toBe(text)
})

test.each([
  [3021, 'firepower', undefined, '3.02 kW'],
  [3021, 'firepower', 'Btu/h', '10308 Btu/h'],
  [2.03e-4, 'fuelRate', undefined, '12.2 g/min'],
  [4800, 'burnTime', undefined, '1 h 20 min'],
  [4800, 'burnTime', 'min', '80 min'],
  [3599, 'burnTime', undefined, '1 h'],
  [1523, 'burnTime', undefined, '25.4 min'],
  [42, 'burnTime', undefined, '42 s'],
  [1115.4, 'flameTemperature', undefined, '842 °C'],
  [293.15, 'ambientTemperature', '°F', '68 °F'],
  [0.08, 'fuelMoisture', undefined, '8 %'],
  [-15, 'bearing', undefined, '-15°'],
  [24, 'holeCount', undefined, '24'],
  [1.3, 'airRatio', undefined, '1.3'],
  [1e-12, 'residual', undefined, '1.0e-12'],
  [0, 'residual', undefined, '0'],
  [-1e-9, 'clearance', undefined, '0 mm'],
  [0.016, 'holeDiameter', 'in', '5/8 in'],
  [0.0002, 'bodyWall', 'in', '0.008 in'],
  [0.00024, 'bodyWall', undefined, '0.24 mm'],
  [0.25 * 0.0254, 'holeDiameter', undefined, '6.4 mm'],
  [-0.25 * 0.0254, 'clearance', undefined, '-6.4 mm'],
] as const)('%d as %s in %s: %s', (value, key, unit, text) => {
  expect(formatQuantity(value, key, unit)).toBe(text)
})

test('what is not a number is not written', () => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => formatQuantity(value, 'firepower')).toThrow(RangeError)
    expect(() => formatLength(value as Metres, { units: 'both' })).toThrow(RangeError)
    expect(() => inchFraction(value as Metres, 16)).toThrow(RangeError)
  }
  expect(() => formatQuantity(1, 'firepower', 'mm')).toThrow(RangeError)
})
