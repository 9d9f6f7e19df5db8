import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import reference from '#reference/heatingValues.json' with { type: 'json' }
import { higherHeatingValue, lowerHeatingValue, lowerHeatingValueAsFired } from '#science/fuel/composition.ts'

const rows = reference.rows.map((row) => {
  const [fuel, C, H, N, O, ash, measured] = row as [string, number, number, number, number, number, number]
  return {
    fuel,
    measured,
    analysis: { C: C / 100, H: H / 100, N: N / 100, O: O / 100, S: 0, ash: ash / 100 },
  }
})

/** Fuels of the paper that are in our table, or pressed to pellets there. */
const OURS = ['coconut shell', 'subabul wood', 'groundnut shell', 'wheat straw', 'bagasse']
describe('heating value from the analysis, Channiwala & Parikh, Fuel 81 (2002) 1051', () => {
  const misses = rows.map(({ fuel, measured, analysis }) => {
    const computed = higherHeatingValue(analysis) / 1e6
    return { fuel, computed, miss: (computed - measured) / measured }
  })

  test('goes wrong both ways: it is not the correlation that leans', () => {
    expect(misses.some(({ miss }) => miss > 0) && misses.some(({ miss }) => miss < 0)).toBe(true)
  })

  test('the fuels of our table are the better ones: within 6 %', () => {
    const ours = misses.filter(({ fuel }) => OURS.includes(fuel))
    expect(ours).toHaveLength(OURS.length)
    for (const { miss } of ours) expect(Math.abs(miss)).toBeLessThan(0.06)
  })

  // By hand: 0.3491·50.2 + 1.1783·5.7 − 0.1034·43.4 − 0.0211·0.7 = 19.739.
  test('coconut shell by hand', () => {
    expect(misses[0]?.computed).toBeCloseTo(19.739, 3)
  })

  // By hand, with nitrogen and sulphur in it: 0.3491·40 + 1.1783·5 + 0.1005·2 − 0.1034·35 − 0.0151·3 − 0.0211·15 = 16.0757.
  test('a made-up fuel with every element by hand', () => {
    expect(higherHeatingValue({ C: 0.4, H: 0.05, S: 0.02, O: 0.35, N: 0.03, ash: 0.15 }) / 1e6).toBeCloseTo(
      16.0757,
      3,
    )
  })
})

describe('moisture', () => {
  const lower = lowerHeatingValue(20e6, 0.06)

  test('hydrogen takes its water away as vapour: 2.442 · 8.936 MJ a kilogram of it', () => {
    expect(20e6 - lower).toBeCloseTo(2.442e6 * 8.936 * 0.06, 3)
  })

  // Softwood by hand: HHV 0.3491·50.5 + 1.1783·6.1 − 0.1034·42.8 − 0.0151·0.1 − 0.0211·0.5 = 20.3796;
  // LHV₀ = 20.3796 − 2.442·8.936·6.1/100 = 19.0485; at 10 %: 19.0485·0.9 − 2.442·0.1 = 16.8994 MJ/kg.
  test('softwood dry and at 10 % by hand', () => {
    const higher = higherHeatingValue({ C: 0.505, H: 0.061, O: 0.428, N: 0.001, S: 0, ash: 0.005 })
    const dry = lowerHeatingValue(higher, 0.061)
    expect(higher / 1e6).toBeCloseTo(20.3796, 3)
    expect(dry / 1e6).toBeCloseTo(19.0485, 3)
    expect(lowerHeatingValueAsFired(dry, 0.1) / 1e6).toBeCloseTo(16.8994, 3)
  })

  test('dry fuel as fired is dry fuel', () => {
    expect(lowerHeatingValueAsFired(lower, 0)).toBe(lower)
  })

  test('pure water only costs its vaporisation', () => {
    expect(lowerHeatingValueAsFired(lower, 1)).toBeCloseTo(-2.442e6, 3)
  })

  test('the wetter, the less heat a kilogram has', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.99, noNaN: true }), (moisture) => {
        expect(lowerHeatingValueAsFired(lower, moisture + 0.01)).toBeLessThan(
          lowerHeatingValueAsFired(lower, moisture),
        )
      }),
      { seed: 31 },
    )
  })
})
