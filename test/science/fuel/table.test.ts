import { describe, expect, test } from 'vitest'
import a1 from '#reference/pelletClassA1.json' with { type: 'json' }
import { medianCoefficients } from '#science/coefficients.ts'
import { charYield, frontModel } from '#science/fire/front.ts'
import { higherHeatingValue, lowerHeatingValue, lowerHeatingValueAsFired } from '#science/fuel/composition.ts'
import { type Fuel, fuelTable } from '#science/fuel/table.ts'

const named = (key: string): Fuel => {
  const fuel = fuelTable.get(key)
  if (fuel === undefined) throw new Error(`${key} is not in the table`)
  return fuel
}

test('the keys that stove files use', () => {
  expect([...fuelTable.keys()]).toEqual([
    'pellets-6mm',
    'pellets-8mm',
    'wood-chips',
    'subabul-chips',
    'twigs',
    'coconut-shell',
    'groundnut-shell',
    'bagasse-pellets',
    'straw-pellets',
  ])
})

describe.each([...fuelTable.values()])('$key', (fuel) => {
  test('is physically possible', () => {
    const { C, H, O, N, S, ash } = fuel.analysis
    expect(Math.abs(C + H + O + N + S + ash - 1)).toBeLessThan(0.01)
    // Where Ergun's equation was tested.
    expect(fuel.voidFraction).toBeGreaterThan(0.36)
    expect(fuel.voidFraction).toBeLessThan(0.92)
    // Shells to dense pellets; the wood substance itself has 1500 kg/m³ (from memory).
    expect(fuel.pieceDensity).toBeGreaterThan(200)
    expect(fuel.pieceDensity).toBeLessThan(1500)
    expect(Math.abs(higherHeatingValue(fuel.analysis) / fuel.higherHeatingValue - 1)).toBeLessThan(0.06)
  })

  test('says where each number comes from', () => {
    for (const source of Object.values(fuel.sources)) expect(source).toMatch(/from memory|bib:\w+/)
  })

  test('has less ash than the char the front leaves of it, ash included, in any can and weather', () => {
    for (const width of [0.05, 0.1, 0.2])
      for (const moisture of [0, 0.15, 0.3])
        expect(charYield(fuel.pieceDiameter, moisture, width, medianCoefficients)).toBeGreaterThan(
          fuel.analysis.ash,
        )
  })

  test('glows at its usual moisture', () => {
    const front = frontModel(fuel, fuel.moisture, 293.15, medianCoefficients).close(1.5, 293.15)
    expect(front.ok).toBe(true)
  })
})

// ISO 17225-2 class A1 (secondary), as limits of what can be.
describe.each(['pellets-6mm', 'pellets-8mm'])('%s are of class A1', (key) => {
  const fuel = named(key)
  const netAt = (moisture: number): number =>
    lowerHeatingValueAsFired(lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H), moisture)

  test('their heat, at the most moisture the class allows too', () => {
    expect(netAt(fuel.moisture) / 1e6).toBeGreaterThan(a1.leastNetCalorificValue_MJ_kg)
    expect(netAt(a1.mostMoisture) / 1e6).toBeGreaterThan(a1.leastNetCalorificValue_MJ_kg)
  })

  test('moisture, density, length and ash', () => {
    expect(fuel.moisture).toBeLessThanOrEqual(a1.mostMoisture)
    expect(fuel.bulkDensity).toBeGreaterThanOrEqual(a1.bulkDensity_kg_m3[0] as number)
    expect(fuel.bulkDensity).toBeLessThanOrEqual(a1.bulkDensity_kg_m3[1] as number)
    expect(fuel.pieces.length * 1000).toBeGreaterThan(a1.length_mm[0] as number)
    expect(fuel.pieces.length * 1000).toBeLessThan(a1.length_mm[1] as number)
    expect(fuel.analysis.ash).toBeLessThanOrEqual(a1.mostAsh)
  })
})

test('straw is no fuel of class A1: its ash and its heat say so', () => {
  const straw = named('straw-pellets')
  const net = lowerHeatingValueAsFired(lowerHeatingValue(straw.higherHeatingValue, straw.analysis.H), 0.1)
  expect(straw.analysis.ash).toBeGreaterThan(a1.mostAsh)
  expect(net / 1e6).toBeLessThan(a1.leastNetCalorificValue_MJ_kg)
})
