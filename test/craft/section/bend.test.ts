import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bend, type End, endAt, lengthOf, placesAlong, type Way } from '#craft/section/bend.ts'
import type { HalfPoint } from '#craft/section/half.ts'

const along: Record<Way, readonly [number, number]> = { out: [1, 0], in: [-1, 0], up: [0, 1], down: [0, -1] }
const way = fc.constantFrom<Way>('out', 'in', 'up', 'down')
const place = fc.record({ r: fc.integer({ min: -40, max: 40 }), z: fc.integer({ min: -40, max: 40 }) })

/** Ends that a ribbon can reach without going backwards first. */
const ahead = fc
  .tuple(place, place, way, way, fc.double({ min: 0.2, max: 6, noNaN: true }))
  .filter(([p, q, from, to]) => {
    const [dr, dz] = [q.r - p.r, q.z - p.z]
    const on = (w: Way): number => dr * along[w][0] + dz * along[w][1]
    return on(from) > 8 && on(to) > 8
  })
  .map(([p, q, from, to, width]): readonly [End, End, number] => [
    endAt(p, width, from),
    endAt(q, width, to),
    width,
  ])

describe('the way of a ribbon', () => {
  test('goes on without a gap from its start to its end', () => {
    fc.assert(
      fc.property(ahead, ([start, finish]) => {
        const stretches = bend(start, finish)
        const near = ({ r, z }: HalfPoint) => ({ r: expect.closeTo(r, 6), z: expect.closeTo(z, 6) })
        expect(stretches[0]?.left[0]).toEqual(near(start.left))
        expect(stretches.at(-1)?.right[3]).toEqual(near(finish.right))
        for (const [i, { left, right }] of stretches.entries()) {
          const next = stretches[i + 1]
          if (next === undefined) continue
          expect(next.left[0].r).toBeCloseTo(left[3].r, 9)
          expect(next.right[0].z).toBeCloseTo(right[3].z, 9)
        }
      }),
    )
  })

  test('sets out and arrives the way it was told', () => {
    fc.assert(
      fc.property(ahead, ([start, finish]) => {
        const [first, last] = placesAlong(bend(start, finish), [0.004, 0.998])
        const [sr, sz] = along[start.way]
        const [fr, fz] = along[finish.way]
        expect(Math.cos((first?.angle ?? 9) - Math.atan2(sz, sr))).toBeGreaterThan(0.93)
        expect(Math.cos((last?.angle ?? 9) - Math.atan2(fz, fr))).toBeGreaterThan(0.93)
      }),
    )
  })

  test('keeps its width, but for a little in the turns', () => {
    fc.assert(
      fc.property(ahead, ([start, finish, width]) => {
        const shares = Array.from({ length: 21 }, (_, i) => i / 20)
        for (const place of placesAlong(bend(start, finish), shares)) {
          expect(place.width).toBeGreaterThan(width * 0.7)
          expect(place.width).toBeLessThan(width * 1.45)
        }
      }),
    )
  })

  test('a quarter turn of 10 by 10 is as long as a quarter circle', () => {
    const stretches = bend(endAt({ r: 10, z: 0 }, 0.01, 'in'), endAt({ r: 0, z: 10 }, 0.01, 'up'))
    // π/2 · 10; the cubic is off by 0.03 % of its radius at most, chords of 16 steps take off 0.05 %.
    expect(lengthOf(stretches)).toBeCloseTo((Math.PI / 2) * 10, 1)
  })

  test('air that turns back keeps near the wall', () => {
    const stretches = bend(endAt({ r: 50, z: 15 }, 2, 'in'), endAt({ r: 50, z: 90 }, 2, 'out'))
    const reach = placesAlong(stretches, [0.25, 0.5, 0.75]).map(({ at }) => 50 - at.r)
    expect(Math.max(...reach)).toBeLessThan(12)
    expect(Math.min(...reach)).toBeGreaterThan(2)
  })
})
