import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  blackEmission,
  concentricFlux,
  exchangeArea,
  radiationCoefficient,
} from '#science/heat/greyRadiation.ts'
import { discToDisc, ringView, tubeToDisc } from '#science/heat/viewFactors.ts'

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1)
const size = fc.double({ min: 0.02, max: 0.5, noNaN: true })
const emissivity = fc.double({ min: 0.03, max: 1, noNaN: true })

describe('grey surfaces', () => {
  test('concentric cylinders are the general pair with a view factor of one', () => {
    fc.assert(
      fc.property(size, size, emissivity, emissivity, (a, b, e1, e2) => {
        const [inner, outer] = a < b ? [a, b] : [b, a]
        const flux = concentricFlux(800, 400, e1, e2, inner / outer)
        const pair =
          (exchangeArea(inner, e1, outer, e2, 1) * (blackEmission(800) - blackEmission(400))) / inner
        expect(relative(flux, pair)).toBeLessThan(1e-10)
      }),
    )
  })

  test('the exchange is mutual, never more than black, and nothing without a view', () => {
    fc.assert(
      fc.property(size, size, emissivity, emissivity, (a1, a2, e1, e2) => {
        const view = 0.5 * Math.min(1, a2 / a1)
        const one = exchangeArea(a1, e1, a2, e2, view)
        expect(relative(one, exchangeArea(a2, e2, a1, e1, (view * a1) / a2))).toBeLessThan(1e-10)
        expect(one).toBeLessThanOrEqual(a1 * view * (1 + 1e-12))
      }),
    )
    expect(exchangeArea(1, 0.5, 1, 0.5, 0)).toBe(0)
  })

  test('as a coefficient it gives the same heat', () => {
    expect(radiationCoefficient(0.7, 600, 400) * 200).toBeCloseTo(
      0.7 * (blackEmission(600) - blackEmission(400)),
      8,
    )
  })
})

describe('view factors', () => {
  test('reciprocity, shares between 0 and 1, and the far and near limits', () => {
    fc.assert(
      fc.property(size, size, size, (a, b, h) => {
        expect(relative(discToDisc(a, b, h) * a * a, discToDisc(b, a, h) * b * b)).toBeLessThan(1e-9)
        expect(discToDisc(a, b, h)).toBeLessThanOrEqual(1)
        const wall = tubeToDisc(a, h)
        expect(wall).toBeGreaterThan(0)
        expect(wall).toBeLessThan(0.5)
        const inner = Math.min(a, b) * 0.99
        const outer = Math.max(a, b)
        const ring = ringView(inner, outer, h)
        for (const share of Object.values(ring)) {
          expect(share).toBeGreaterThanOrEqual(-1e-9)
          expect(share).toBeLessThanOrEqual(1)
        }
        // A ring of wide tubes close together sees itself only.
        expect(ringView(inner, outer, h * 2).innerToOuter).toBeGreaterThan(ring.innerToOuter)
      }),
    )
    expect(discToDisc(0.1, 0.1, 1e-6)).toBeCloseTo(1, 4)
    // Far away: the disc's share of the cosine-weighted sky, (r₂/h)².
    expect(discToDisc(0.01, 0.02, 10)).toBeCloseTo((0.02 / 10) ** 2, 10)
  })
})
