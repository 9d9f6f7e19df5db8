import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import published from '#reference/packedVoid.json' with { type: 'json' }
import { equalVolumeDiameter, sphericity } from '#science/fuel/pieces.ts'
import { meanVoid, solidRatio } from '#science/fuel/wallEffect.ts'
import type { FuelPieces } from '#stove/model.ts'
import { anyPieces, block, rod } from './pieces.ts'

/** The same shape, made so large that its ball of equal volume has this diameter. */
const sized = (make: (scale: number) => FuelPieces, diameter: number): FuelPieces =>
  make(diameter / equalVolumeDiameter(make(1)))

describe('mean void of a packed tube, Benyahia & O’Neill (2005), examples of a published program', () => {
  test.each(published.rods)('rods of $d_m m in $D_m m', ({ d_m, D_m, void: expected }) => {
    const pieces = sized((scale) => rod(scale, scale), d_m)
    expect(meanVoid(pieces, D_m)).toBeCloseTo(expected, 12)
  })

  test.each(published.anyShape)(
    'sphericity $sphericity, $d_m m in $D_m m',
    ({ d_m, D_m, sphericity: phi, void: expected }) => {
      // A square rod of the sphericity asked for, its slenderness by bisection.
      let [low, high] = [1, 4]
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2
        if (sphericity(block(middle, 1, 1)) > phi) low = middle
        else high = middle
      }
      const pieces = sized((scale) => block(low * scale, scale, scale), d_m)
      expect(meanVoid(pieces, D_m)).toBeCloseTo(expected, 10)
    },
  )
})

test('the narrower the can, the more of it is air, for any pieces', () => {
  fc.assert(
    fc.property(anyPieces, fc.double({ min: 2, max: 40, noNaN: true }), (pieces, across) => {
      const wide = across * equalVolumeDiameter(pieces)
      expect(meanVoid(pieces, 0.95 * wide)).toBeGreaterThan(meanVoid(pieces, wide))
      expect(solidRatio(pieces, wide, 0.95 * wide)).toBeLessThan(1)
    }),
    { seed: 43 },
  )
})

test('there and back again is the same filling', () => {
  const chips = block(20, 12, 6)
  expect(solidRatio(chips, 0.09, 0.2) * solidRatio(chips, 0.2, 0.09)).toBeCloseTo(1, 14)
  expect(solidRatio(chips, 0.09, 0.09)).toBe(1)
})

test('where fewer pieces go across than were measured, the void is held', () => {
  const twig = rod(10, 40)
  const narrowest = 1.7 * equalVolumeDiameter(twig)
  expect(meanVoid(twig, 0.5 * narrowest)).toBe(meanVoid(twig, narrowest))
})
