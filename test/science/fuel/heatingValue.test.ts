import { describe, expect, test } from 'vitest'
import reference from '#reference/heatingValues.json' with { type: 'json' }
import {
  higherHeatingValue,
  lowerHeatingValue,
  lowerHeatingValueAsFired,
  stoichiometricAir,
} from '#science/fuel/composition.ts'
import { cylinderSauterDiameter, fuelTable } from '#science/fuel/table.ts'

const rows = reference.rows.map((row) => {
  const [fuel, C, H, N, O, ash, measured] = row as [string, number, number, number, number, number, number]
  return {
    fuel,
    measured,
    analysis: { C: C / 100, H: H / 100, N: N / 100, O: O / 100, S: 0, ash: ash / 100 },
  }
})

describe('heating value from the analysis, Channiwala & Parikh, Fuel 81 (2002) 1051', () => {
  const misses = rows.map(({ fuel, measured, analysis }) => {
    const computed = higherHeatingValue(analysis) / 1e6
    return { fuel, measured, computed, miss: (computed - measured) / measured }
  })

  test('beside the measured values of Raveendran et al., Fuel 74 (1995) 1812, printed', () => {
    for (const { fuel, measured, computed, miss } of misses)
      console.log(
        `heating value of ${fuel}: measured ${measured.toFixed(2)}, from the analysis ${computed.toFixed(2)} MJ/kg (${(100 * miss).toFixed(1)} %)`,
      )
    // Its authors' mean error is 1.45 %; these five are its worse cases, shells and straws among them.
    for (const { miss } of misses) expect(Math.abs(miss)).toBeLessThan(0.06)
  })

  // By hand: 0.3491·50.2 + 1.1783·5.7 − 0.1034·43.4 − 0.0211·0.7 = 19.739.
  test('coconut shell by hand', () => {
    expect(misses[0]?.computed).toBeCloseTo(19.739, 3)
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

  test('dry fuel as fired is dry fuel', () => {
    expect(lowerHeatingValueAsFired(lower, 0)).toBe(lower)
  })

  test('pure water only costs its vaporisation', () => {
    expect(lowerHeatingValueAsFired(lower, 1)).toBeCloseTo(-2.442e6, 3)
  })
})

describe('the fuel table', () => {
  test.each([...fuelTable.values()])('$key is physically possible', (fuel) => {
    const { C, H, O, N, S, ash } = fuel.analysis
    expect(Math.abs(C + H + O + N + S + ash - 1)).toBeLessThan(0.01)
    expect(fuel.voidFraction).toBeGreaterThan(0.36)
    expect(fuel.voidFraction).toBeLessThan(0.92)
    // Bulk over what is not air is the density of a piece: shells to dense pellets.
    const piece = fuel.bulkDensity / (1 - fuel.voidFraction)
    expect(piece).toBeGreaterThan(200)
    expect(piece).toBeLessThan(1500)
    expect(Math.abs(higherHeatingValue(fuel.analysis) / fuel.higherHeatingValue - 1)).toBeLessThan(0.06)
  })

  test('pellets of class A1 as the standard sells them (ISO 17225-2, secondary)', () => {
    for (const key of ['pellets-6mm', 'pellets-8mm']) {
      const fuel = fuelTable.get(key)
      if (fuel === undefined) throw new Error(`${key} is not in the table`)
      const net = lowerHeatingValueAsFired(
        lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H),
        fuel.moisture,
      )
      expect(net).toBeGreaterThan(16.5e6)
      expect(fuel.moisture).toBeLessThanOrEqual(0.1)
      expect(fuel.bulkDensity).toBeGreaterThanOrEqual(600)
      expect(fuel.bulkDensity).toBeLessThanOrEqual(750)
    }
  })

  test('a cylinder as long as it is thick has the Sauter diameter of its sphere', () => {
    expect(cylinderSauterDiameter(0.01, 0.01)).toBeCloseTo(0.01, 12)
  })
})
