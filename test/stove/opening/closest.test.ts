import fc from 'fast-check'
import { expect, test } from 'vitest'
import { degrees, metres } from '#basis/units.ts'
import { closestHoles } from '#stove/opening/layout.ts'

test('the closest two of any holes, as comparing every pair finds them by the cosine rule', () => {
  const hole = fc.record({
    radius: fc.double({ min: 0, max: 0.05, noNaN: true }).map(metres),
    bearing: fc.double({ min: 0, max: 360, maxExcluded: true, noNaN: true }).map(degrees),
  })
  fc.assert(
    fc.property(fc.array(hole, { minLength: 2, maxLength: 60 }), (holes) => {
      const pairs = holes.flatMap((a, i) =>
        holes.slice(i + 1).map((b) => {
          const between = Math.cos(((a.bearing - b.bearing) * Math.PI) / 180)
          return Math.sqrt(Math.max(0, a.radius ** 2 + b.radius ** 2 - 2 * a.radius * b.radius * between))
        }),
      )
      // The cosine rule loses half its digits for points that nearly coincide.
      expect(closestHoles(holes)).toBeCloseTo(Math.min(...pairs), 8)
    }),
  )
})
