import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import reference from '#reference/heatingValues.json' with { type: 'json' }
import {
  higherHeatingValue,
  lowerHeatingValue,
  lowerHeatingValueAsFired,
  stoichiometricAir,
} from '#science/fuel/composition.ts'

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
/** What its authors state over 275 fuels: a mean, not a bound [1]. */
const MEAN_ERROR = 0.0145

describe('heating value from the analysis, Channiwala & Parikh, Fuel 81 (2002) 1051', () => {
  const misses = rows.map(({ fuel, measured, analysis }) => {
    const computed = higherHeatingValue(analysis) / 1e6
    return { fuel, measured, computed, miss: (computed - measured) / measured }
  })

  test('beside thirteen measured by Raveendran et al., Fuel 74 (1995) 1812: hits and misses, printed', () => {
    for (const { fuel, measured, computed, miss } of misses)
      console.log(
        `heating value of ${fuel}: measured ${measured.toFixed(2)}, from the analysis ${computed.toFixed(2)} MJ/kg (${(100 * miss).toFixed(1)} %, ${Math.abs(miss) <= MEAN_ERROR ? 'hit' : 'miss'} at 1.45 %)`,
      )
    // None is a hit. The misses go both ways, to −14 and +27 % for straw and coir, so it is not the correlation that
    // leans: analysis and calorimeter of this paper do not fit each other better. The table keeps what was measured.
    expect(misses.filter(({ miss }) => Math.abs(miss) <= MEAN_ERROR).map(({ fuel }) => fuel)).toEqual([])
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

// Computed by hand from the elements with air of 0.2314 kg oxygen a kilogram.
test('softwood needs about 6.05 kg of air a kilogram of dry fuel', () => {
  const air = stoichiometricAir({ C: 0.505, H: 0.061, O: 0.428, N: 0.001, S: 0, ash: 0.005 })
  expect(Math.abs(air - 6.05)).toBeLessThan(0.05)
})

test('carbon alone needs 32/12 of its mass in oxygen', () => {
  const air = stoichiometricAir({ C: 1, H: 0, O: 0, N: 0, S: 0, ash: 0 })
  // 31.998/12.011 kg of oxygen; dry air holds 0.2314 kg of it (ISO 2533).
  expect(air * 0.2314).toBeCloseTo(31.998 / 12.011, 3)
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
