import fc from 'fast-check'
import { expect, test } from 'vitest'
import { equalVolumeDiameter } from '#science/fuel/pieces.ts'
import { meanVoid, solidRatio } from '#science/fuel/wallEffect.ts'
import { anyPieces, block, rod } from './pieces.ts'

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
