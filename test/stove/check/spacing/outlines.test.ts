import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { degrees, fromMillimetres, type Metres } from '#basis/units.ts'
import {
  closestOnFace,
  faceOutlines,
  innerReach,
  outerReach,
  tinBetweenOnFace,
} from '#stove/check/spacing/faceOutline.ts'
import {
  closestBetweenRows,
  closestInRow,
  rowOutlines,
  tinToBearing,
} from '#stove/check/spacing/wallOutline.ts'
import type { RowOpening } from '#stove/model.ts'
import { bore, rings, round, row, slit, vanes, window } from '../stoves.ts'

const round300 = fromMillimetres(300)
const gap = (one: RowOpening, other: RowOpening, circumference: Metres = round300): number =>
  (closestBetweenRows(
    rowOutlines('a', one, circumference),
    rowOutlines('b', other, circumference),
    circumference,
  )?.gap ?? Number.NaN) * 1000

const hole = fc.oneof(
  fc.double({ min: 2, max: 20, noNaN: true }).map(round),
  fc
    .tuple(fc.double({ min: 4, max: 20, noNaN: true }), fc.double({ min: 11, max: 30, noNaN: true }))
    .map(([w, h]) => window(w, h, 'round')),
  fc
    .tuple(fc.double({ min: 4, max: 20, noNaN: true }), fc.double({ min: 4, max: 30, noNaN: true }))
    .map(([w, h]) => window(w, h)),
  fc
    .tuple(fc.double({ min: 8, max: 30, noNaN: true }), fc.double({ min: 1, max: 4, noNaN: true }))
    .map(([l, w]) => slit(l, w, 'axis')),
)
const anyRow = fc
  .tuple(
    fc.integer({ min: 1, max: 9 }),
    hole,
    fc.double({ min: 20, max: 90, noNaN: true }),
    fc.double({ min: 0, max: 360, noNaN: true }),
  )
  .map(([count, shape, height, bearing]) => row('intake', count, shape, height, { bearing }))
const turn = fc.double({ min: -720, max: 720, noNaN: true })

describe('openings on the unrolled wall', () => {
  test('neighbours are an arc apart, less a hole: 300/24 − 8 = 4.5', () => {
    const outlines = rowOutlines('a', row('intake', 24, round(8), 50), round300)
    expect((closestInRow(outlines, round300)?.gap ?? 0) * 1000).toBeCloseTo(4.5, 9)
  })

  test('staggered rows: a right triangle of 6 by 8 leaves 10 − 3 − 2', () => {
    // Half a pitch of 12 mm is 6 mm.
    const lower = row('intake', 25, round(6), 40)
    const upper = row('intake', 25, round(4), 48, { bearing: 180 / 25 })
    expect(gap(lower, upper)).toBeCloseTo(5, 9)
  })

  test('across the front mark: 359° and 1° are 2° apart', () => {
    const one = row('intake', 1, round(1), 40, { bearing: 359 })
    const other = row('intake', 1, round(1), 40, { bearing: 1 })
    expect(gap(one, other)).toBeCloseTo((300 * 2) / 360 - 1, 9)
  })

  test('windows side by side and one over the other', () => {
    const one = row('intake', 1, window(20, 10), 40)
    expect(gap(one, row('intake', 1, window(10, 10), 40, { bearing: 36 }))).toBeCloseTo(30 - 15, 9)
    expect(gap(one, row('intake', 1, window(10, 10), 57))).toBeCloseTo(7, 9)
    // 3 across and 4 up between the corners.
    expect(gap(one, row('intake', 1, window(10, 10), 54, { bearing: (18 / 300) * 360 }))).toBeCloseTo(5, 9)
  })

  test('a round foot is further from what lies beside it low down than a square one', () => {
    const low = row('intake', 1, round(2), 31, { bearing: (10 / 300) * 360 })
    // Foot of 10 mm: its circle is about (0, 35) with radius 5; the hole's middle is (10, 31).
    expect(gap(row('intake', 1, window(10, 20, 'round'), 40), low)).toBeCloseTo(Math.hypot(10, 4) - 5 - 1, 9)
    expect(gap(row('intake', 1, window(10, 20), 40), low)).toBeCloseTo(10 - 5 - 1, 9)
  })

  test('a line through a hole is inside it by its radius', () => {
    const [outline] = rowOutlines('a', row('intake', 4, round(8), 40), round300)
    if (outline === undefined) throw new Error('no outline')
    expect(tinToBearing(outline, 0, round300) * 1000).toBeCloseTo(-4, 9)
    expect(tinToBearing(outline, 348, round300) * 1000).toBeCloseTo(10 - 4, 9)
  })

  test('turning both rows, or mirroring both, leaves the tin between them', () => {
    fc.assert(
      fc.property(anyRow, anyRow, turn, (one, other, by) => {
        const turned = (what: RowOpening): RowOpening => ({ ...what, bearing: degrees(what.bearing + by) })
        const mirrored = (what: RowOpening): RowOpening => ({ ...what, bearing: degrees(-what.bearing) })
        const still = gap(one, other)
        expect(gap(turned(one), turned(other))).toBeCloseTo(still, 8)
        expect(gap(mirrored(one), mirrored(other))).toBeCloseTo(still, 8)
        expect(gap(other, one)).toBeCloseTo(still, 12)
      }),
    )
  })

  test('twice as large all over, twice the tin', () => {
    const doubled = (what: RowOpening): RowOpening => ({
      ...what,
      height: (2 * what.height) as Metres,
      hole:
        what.hole.shape === 'round'
          ? { ...what.hole, diameter: (2 * what.hole.diameter) as Metres }
          : what.hole.shape === 'window'
            ? {
                ...what.hole,
                width: (2 * what.hole.width) as Metres,
                height: (2 * what.hole.height) as Metres,
              }
            : {
                ...what.hole,
                width: (2 * what.hole.width) as Metres,
                length: (2 * what.hole.length) as Metres,
              },
    })
    fc.assert(
      fc.property(anyRow, anyRow, (one, other) => {
        expect(gap(doubled(one), doubled(other), fromMillimetres(600))).toBeCloseTo(2 * gap(one, other), 8)
      }),
    )
  })
})

describe('openings of a flat face', () => {
  test('holes on a ring are a chord apart, less a hole', () => {
    expect(closestOnFace(faceOutlines(rings('primary', 4, [[20, 6]]))) * 1000).toBeCloseTo(20 - 4, 9)
  })

  test('vanes: from the free corner square to the next hinge, r sin α − w cos α', () => {
    // 8 vanes from 20 mm out, 9 mm wide: 20 sin 45° − 9 cos 45° = 7.778.
    expect(closestOnFace(faceOutlines(vanes(8, 20, 40, 9))) * 1000).toBeCloseTo((20 - 9) / Math.SQRT2, 9)
  })

  test('vanes that are too wide meet', () => {
    expect(closestOnFace(faceOutlines(vanes(8, 8, 40, 9)))).toBeLessThanOrEqual(0)
  })

  test('a vane reaches to its outer corner and no nearer than its hinge', () => {
    const [vane] = faceOutlines(vanes(1, 12, 40, 9))
    if (vane === undefined) throw new Error('no vane')
    expect(outerReach(vane) * 1000).toBeCloseTo(41, 9)
    expect(innerReach(vane) * 1000).toBeCloseTo(12, 9)
  })

  test('a bore and a vane', () => {
    const [hub] = faceOutlines(bore(20))
    const [vane] = faceOutlines(vanes(1, 14, 40, 9))
    if (hub === undefined || vane === undefined) throw new Error('nothing cut')
    expect(tinBetweenOnFace(hub, vane) * 1000).toBeCloseTo(4, 9)
    expect(tinBetweenOnFace(vane, hub) * 1000).toBeCloseTo(4, 9)
  })

  test('clockwise and anticlockwise vanes are mirror images', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 16 }),
        fc.double({ min: 8, max: 20, noNaN: true }),
        fc.double({ min: 2, max: 12, noNaN: true }),
        (count, inner, width) => {
          const clockwise = closestOnFace(faceOutlines(vanes(count, inner, 40, width)))
          const anticlockwise = closestOnFace(
            faceOutlines(vanes(count, inner, 40, width, { hand: 'anticlockwise' })),
          )
          expect(anticlockwise).toBeCloseTo(clockwise, 12)
        },
      ),
    )
  })
})
