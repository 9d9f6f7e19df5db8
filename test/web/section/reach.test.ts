import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LARGEST_REACH, reachesOf, SMALLEST_REACH } from '#web/section/reach.ts'

const place = fc.record({ x: fc.integer({ min: 0, max: 300 }), y: fc.integer({ min: 0, max: 300 }) })

describe('how far a press means a handle', () => {
  it('is wide where a handle stands alone', () => {
    expect(reachesOf([{ x: 10, y: 10 }])).toEqual([LARGEST_REACH])
    expect(reachesOf([])).toEqual([])
  })

  it('never covers the middle of another handle that can be told from it', () => {
    fc.assert(
      fc.property(fc.array(place, { maxLength: 12 }), (places) => {
        const reaches = reachesOf(places)
        for (const [i, here] of places.entries())
          for (const other of places) {
            const apart = Math.hypot(here.x - other.x, here.y - other.y)
            if (other === here || apart <= SMALLEST_REACH) continue
            expect(reaches[i]).toBeLessThan(apart)
          }
      }),
    )
  })
})
