import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bedPassage, tippedResistance } from '#science/fuel/bedResistance.ts'
import { finesFactor, MOST_FINES } from '#science/fuel/fines.ts'

test('none make no difference, and more always make more', () => {
  expect(finesFactor(0)).toBe(1)
  fc.assert(
    fc.property(fc.double({ min: 0, max: MOST_FINES - 0.001, noNaN: true }), (share) => {
      expect(finesFactor(share + 0.001)).toBeGreaterThan(finesFactor(share))
    }),
    { seed: 47 },
  )
})

test('a bed twice as deep resists twice as much, one twice as wide less by two and by four', () => {
  const bed = tippedResistance(0.5, 0.01)
  const once = bedPassage(bed, 0.005, 0.05)
  const deep = bedPassage(bed, 0.005, 0.1)
  const wide = bedPassage(bed, 0.01, 0.05)
  expect([deep.viscous / once.viscous, deep.inertial / once.inertial]).toEqual([2, 2])
  expect([once.viscous / wide.viscous, once.inertial / wide.inertial]).toEqual([2, 4])
})
