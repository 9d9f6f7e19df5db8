import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { degrees, fromMillimetres as mm } from '#basis/units.ts'
import type { WallHole } from '#stove/model.ts'
import { holeArea } from '#stove/opening/area.ts'
import { openingOverlap } from '#stove/opening/overlap.ts'
import { wallHoleSize } from '#stove/opening/row.ts'

const areaOf = (hole: WallHole): number =>
  holeArea({
    kind: 'row',
    duty: 'intake',
    hole,
    count: 1,
    leftOut: [],
    height: mm(20),
    bearing: degrees(0),
  })

/** The foot and head of a circle magnify the last digit of a height to its root [1]. */
const ROUNDING = 1e-8

/** How far to either side a hole reaches at a height above its middle; below 0 outside it. Lengths in metres. */
const halfWidthAt = (hole: WallHole, y: number): number => {
  if (hole.shape === 'round') {
    const radius = hole.diameter / 2
    return Math.abs(y) < radius ? Math.sqrt(radius ** 2 - y ** 2) : -1
  }
  if (hole.shape === 'slit') {
    const tall = hole.along === 'axis' ? hole.length : hole.width
    const wide = hole.along === 'axis' ? hole.width : hole.length
    return Math.abs(y) < tall / 2 ? wide / 2 : -1
  }
  if (Math.abs(y) > hole.height / 2) return -1
  const radius = hole.width / 2
  const centre = -hole.height / 2 + radius
  if (hole.foot === 'square' || y >= centre) return radius
  return Math.sqrt(Math.max(0, radius ** 2 - (y - centre) ** 2))
}

/** The overlap by 20,000 thin strips. */
const byStrips = (a: WallHole, b: WallHole, along: number, up: number): number => {
  const reach = 0.05
  const strips = 20_000
  const step = (2 * reach) / strips
  let area = 0
  for (let i = 0; i < strips; i++) {
    const y = -reach + (i + 0.5) * step
    const one = halfWidthAt(a, y)
    const other = halfWidthAt(b, y - up)
    if (one < 0 || other < 0) continue
    area += Math.max(0, Math.min(one, along + other) - Math.max(-one, along - other)) * step
  }
  return area
}

const length = (low: number, high: number) =>
  fc.integer({ min: low * 100, max: high * 100 }).map((hundredths) => mm(hundredths / 100))

const anyHole: fc.Arbitrary<WallHole> = fc.oneof(
  length(1, 20).map((diameter): WallHole => ({ shape: 'round', diameter, bit: null })),
  fc.record({ width: length(2, 16), extra: length(1, 16), foot: fc.constantFrom('square', 'round') }).map(
    ({ width, extra, foot }): WallHole => ({
      shape: 'window',
      width,
      // At least as tall as its half circle.
      height: mm((width / 2 + extra) * 1000),
      foot: foot as 'square' | 'round',
      bit: null,
    }),
  ),
  fc.record({ length: length(4, 25), width: length(1, 4), along: fc.constantFrom('axis', 'round') }).map(
    ({ length, width, along }): WallHole => ({
      shape: 'slit',
      length,
      width,
      along: along as 'axis' | 'round',
    }),
  ),
)

const offset = fc.integer({ min: -2500, max: 2500 }).map((hundredths) => hundredths / 1e5)

describe('overlap of two wall openings', () => {
  test('is what 20,000 strips add up to', () => {
    fc.assert(
      fc.property(anyHole, anyHole, offset, offset, (a, b, along, up) => {
        const exact = openingOverlap(a, b, along, up)
        // A strip of 5 µm too many or too few at each end, and a circle's curve within the strips.
        const narrower = Math.min(wallHoleSize(a).round, wallHoleSize(b).round)
        expect(Math.abs(exact - byStrips(a, b, along, up))).toBeLessThan(1e-5 * narrower + 1e-4 * areaOf(a))
      }),
      { seed: 11, numRuns: 300 },
    )
  })

  test('an opening over itself is its own area', () => {
    fc.assert(
      fc.property(anyHole, (hole) => {
        expect(Math.abs(openingOverlap(hole, hole, 0, 0) / areaOf(hole) - 1)).toBeLessThan(ROUNDING)
      }),
      { seed: 12, numRuns: 200 },
    )
  })

  test('is the same from either side and mirrored left to right', () => {
    fc.assert(
      fc.property(anyHole, anyHole, offset, offset, (a, b, along, up) => {
        const overlap = openingOverlap(a, b, along, up)
        expect(Math.abs(openingOverlap(b, a, -along, -up) - overlap)).toBeLessThan(ROUNDING * areaOf(a))
        expect(Math.abs(openingOverlap(a, b, -along, up) - overlap)).toBeLessThan(ROUNDING * areaOf(a))
      }),
      { seed: 13, numRuns: 300 },
    )
  })

  test('is never negative and never more than the smaller of the two', () => {
    fc.assert(
      fc.property(anyHole, anyHole, offset, offset, (a, b, along, up) => {
        const overlap = openingOverlap(a, b, along, up)
        expect(overlap).toBeGreaterThanOrEqual(0)
        expect(overlap).toBeLessThanOrEqual(Math.min(areaOf(a), areaOf(b)) * (1 + ROUNDING))
      }),
      { seed: 14, numRuns: 300 },
    )
  })

  test('scales with the square of the lengths', () => {
    const hole = (k: number): WallHole => ({ shape: 'round', diameter: mm(10 * k), bit: null })
    const slot = (k: number): WallHole => ({
      shape: 'window',
      width: mm(8 * k),
      height: mm(12 * k),
      foot: 'round',
      bit: null,
    })
    const small = openingOverlap(hole(1), slot(1), 0.003, 0.002)
    expect(openingOverlap(hole(3), slot(3), 0.009, 0.006) / small).toBeCloseTo(9, 12)
  })

  // Lens of two equal circles r at distance d: 2r² acos(d/2r) − d/2 √(4r² − d²).
  test('two equal holes make the lens of plane geometry', () => {
    const [r, d] = [0.006, 0.005]
    const hole: WallHole = { shape: 'round', diameter: mm(12), bit: null }
    const lens = 2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d)
    expect(openingOverlap(hole, hole, 0.003, 0.004)).toBeCloseTo(lens, 15)
  })
})
