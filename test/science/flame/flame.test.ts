import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import reference from '#reference/flameHeights.json' with { type: 'json' }
import { flameCoefficients } from '#science/flame/coefficients.ts'
import {
  type FlameAir,
  flameOverSource,
  heskestadFlameHeight,
  zukoskiFlameHeight,
} from '#science/flame/height.ts'
import { AIR, specificHeat } from '#science/gas/blend.ts'

const air: FlameAir = { temperature: 293, density: 1.2 }
const relative = (value: number, expected: number): number => Math.abs(value / expected - 1)

/** The power that a dimensionless power stands for. */
const powerOf = (q: number, diameter: number): number =>
  q *
  air.density *
  specificHeat(AIR, air.temperature) *
  air.temperature *
  Math.sqrt(9.80665 * diameter) *
  diameter ** 2

describe('flame height against published correlations and flames', () => {
  test('in common air it is Heskestad’s 0.235 Q^0.4 − 1.02 D in kilowatts and metres', () => {
    for (const kilowatts of [1, 2, 5]) {
      const ours = heskestadFlameHeight(kilowatts * 1000, 0.08, air, 3.0e6)
      expect(Math.abs(ours - (0.235 * kilowatts ** 0.4 - 1.02 * 0.08))).toBeLessThan(0.003)
    }
  })

  test.each(reference['NIST burners'].rows as [string, number, number, number, number, number, number][])(
    '%s on %d m radiates no less than our band’s lower end, sooty as it is',
    (_fuel, _diameter, _flux, _heat, _height, _spread, radiated) => {
      expect(radiated).toBeGreaterThan(flameCoefficients.flameRadiation.low)
    },
  )
})

describe('flame over a concentrator', () => {
  const power = fc.double({ min: 200, max: 8000, noNaN: true })
  const diameter = fc.double({ min: 0.03, max: 0.2, noNaN: true })

  test('more gas left to burn, a taller flame; a wider source, a shorter one; thinner air, a taller one', () => {
    fc.assert(
      fc.property(power, diameter, (q, d) => {
        const here = heskestadFlameHeight(q, d, air, 3e6)
        expect(heskestadFlameHeight(q * 1.05, d, air, 3e6)).toBeGreaterThanOrEqual(here)
        expect(heskestadFlameHeight(q, d * 1.05, air, 3e6)).toBeLessThanOrEqual(here)
        expect(heskestadFlameHeight(q, d, { ...air, density: 0.9 }, 3e6)).toBeGreaterThanOrEqual(here)
      }),
    )
  })

  test('Zukoski’s three pieces nearly meet, and the two correlations stay within our band of each other', () => {
    for (const q of [0.15, 1]) {
      const below = zukoskiFlameHeight(powerOf(q * (1 - 1e-9), 0.1), 0.1, air)
      const above = zukoskiFlameHeight(powerOf(q, 0.1), 0.1, air)
      expect(relative(below, above)).toBeLessThan(0.04)
    }
    const { low, high } = flameCoefficients.flameHeight
    for (const q of [0.4, 0.7, 1, 2, 5, 10]) {
      const ratio =
        zukoskiFlameHeight(powerOf(q, 0.08), 0.08, air) /
        heskestadFlameHeight(powerOf(q, 0.08), 0.08, air, 3.0e6)
      expect(ratio).toBeGreaterThan(low)
      expect(ratio).toBeLessThan(high)
    }
  })

  test('strikes a pot that hangs lower than its tip', () => {
    const high = flameOverSource(2000, 0.08, air, 3e6, 0.5, 1)
    const low = flameOverSource(2000, 0.08, air, 3e6, 0.05, 1)
    expect(high.strikesPot).toBe(false)
    expect(low.strikesPot).toBe(true)
    expect(low.overPot).toBeCloseTo(low.height - 0.05, 12)
    expect(flameOverSource(2000, 0.08, air, 3e6, null, 1).overPot).toBeNull()
  })

  test('no gas left, no flame, and it strikes nothing', () => {
    const out = flameOverSource(0, 0.12, air, 3e6, 0, 1)
    expect(out.height).toBe(0)
    expect(out.strikesPot).toBe(false)
    expect(out.outside).toEqual([])
  })

  test('says that a can stove’s bore is smaller than any burner that was measured', () => {
    expect(flameOverSource(2000, 0.06, air, 3e6, null, 1).outside.map(({ quantity }) => quantity)).toEqual([
      'source diameter, m',
    ])
    expect(flameOverSource(10, 0.2, air, 3e6, null, 1).outside.map(({ quantity }) => quantity)).toEqual([
      'Q*',
    ])
  })
})
