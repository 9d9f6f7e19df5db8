import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { TIN_MELTS, tinplateEmissivity } from '#science/heat/emissivity.ts'
import {
  MEAN_STEEL_HEAT,
  STEEL_HEAT_FROM,
  STEEL_HEAT_TO,
  steelEnthalpy,
  steelHeat,
} from '#science/heat/steel.ts'
import { burnThreshold, longestTouch, touchRisk } from '#science/heat/touch.ts'

describe('emissivity of tinplate', () => {
  test('bright until the tin melts, oxidised in the end, never falling on the way, never a step', () => {
    expect(tinplateEmissivity(TIN_MELTS, false)).toBeLessThan(0.12)
    expect(tinplateEmissivity(TIN_MELTS + 250, false)).toBe(tinplateEmissivity(TIN_MELTS + 250, true))
    fc.assert(
      fc.property(fc.double({ min: 250, max: 1500, noNaN: true }), (temperature) => {
        const here = tinplateEmissivity(temperature, false)
        const next = tinplateEmissivity(temperature + 0.1, false)
        expect(next).toBeGreaterThanOrEqual(here)
        expect(next - here).toBeLessThan(1e-3)
        expect(here).toBeLessThanOrEqual(tinplateEmissivity(temperature, true))
      }),
    )
  })
})

describe('steel sheet', () => {
  test('stored heat is the integral of heat capacity, across the peak at 735 °C too', () => {
    fc.assert(
      fc.property(fc.double({ min: STEEL_HEAT_FROM, max: STEEL_HEAT_TO, noNaN: true }), (temperature) => {
        // Simpson over a small step; not across a joint, where the capacity jumps by a little.
        const h = 0.01
        const joints = [600, 735, 900].map((t) => t + 273.15)
        fc.pre(joints.every((t) => Math.abs(temperature - t) > 2 * h))
        const slope = (steelEnthalpy(temperature + h) - steelEnthalpy(temperature - h)) / (2 * h)
        expect(Math.abs(slope / steelHeat(temperature) - 1)).toBeLessThan(1e-5)
      }),
    )
    expect(steelEnthalpy(293.15)).toBe(0)
  })

  test('the pieces of EN 1993-1-2 meet: 760 at 600 °C, 5000 at 735 °C, 650 at 900 °C', () => {
    expect(steelHeat(873.15 - 1e-6)).toBeCloseTo(steelHeat(873.15), 0)
    expect(steelHeat(1008.15 - 1e-6)).toBeCloseTo(5000, 0)
    expect(steelHeat(1008.15)).toBeCloseTo(5000, 0)
    expect(steelHeat(1173.15 - 1e-6)).toBeCloseTo(650, 0)
  })

  test('the mean that warming a wall asks for is that of its values between 20 and 450 °C', () => {
    const values = Array.from({ length: 430 }, (_, i) => steelHeat(293.65 + i))
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    expect(Math.abs(MEAN_STEEL_HEAT / mean - 1)).toBeLessThan(1e-5)
  })
})

describe('touching bare metal', () => {
  test('the longer the touch the lower the threshold; the lower end is not above the upper', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 20000, noNaN: true }), (time) => {
        const { from, to, covered } = burnThreshold(time)
        expect(covered).toBe(true)
        expect(from).toBeLessThanOrEqual(to)
        expect(burnThreshold(time * 1.1).from).toBeLessThan(from)
      }),
    )
  })

  test('says what is not covered by the standard', () => {
    expect(burnThreshold(0.1).covered).toBe(false)
    expect(burnThreshold(1e6).covered).toBe(false)
  })

  test('the longest touch is the one whose threshold the surface meets', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.51, max: 28000, noNaN: true }), (time) => {
        expect((longestTouch(burnThreshold(time).from) as number) / time).toBeCloseTo(1, 6)
      }),
    )
    expect(longestTouch(373.15)).toBeNull()
    expect(longestTouch(300)).toBe(Number.POSITIVE_INFINITY)
  })

  test('a stove’s wall burns, a warm hand does not', () => {
    expect(touchRisk(473.15, 0.5)).toBe('burns')
    expect(touchRisk(310, 600)).toBe('no burn expected')
    expect(touchRisk(343.15, 0.5)).toBe('may burn')
  })
})
