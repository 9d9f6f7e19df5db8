import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { enteringNusselt, ringNusselt } from '#science/heat/laminarDuct.ts'

describe('laminar flow in a ring gap', () => {
  test('a narrower ring evens its two walls out; entry always helps', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.999, noNaN: true }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (ratio, graetz) => {
          const inner = ringNusselt(ratio, 'inner')
          const outer = ringNusselt(ratio, 'outer')
          expect(inner).toBeGreaterThan(outer)
          expect(ringNusselt(Math.min(1, ratio * 1.001), 'inner')).toBeLessThan(inner)
          expect(ringNusselt(Math.min(1, ratio * 1.001), 'outer')).toBeGreaterThan(outer)
          expect(enteringNusselt(inner, graetz)).toBeGreaterThanOrEqual(inner)
          expect(enteringNusselt(inner, graetz + 1)).toBeGreaterThan(enteringNusselt(inner, graetz))
        },
      ),
    )
  })
})
