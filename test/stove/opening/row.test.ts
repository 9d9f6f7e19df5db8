import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Metres } from '#basis/units.ts'
import { degrees, fromMillimetres } from '#basis/units.ts'
import type { RowOpening } from '#stove/model.ts'
import { closestPitch, drilledCount, placeRow, wallHoleSize, wrapBearing } from '#stove/opening/row.ts'

const mm = fromMillimetres

const row = (count: number, leftOut: readonly number[] = [], bearing = 0): RowOpening => ({
  kind: 'row',
  duty: 'intake',
  hole: { shape: 'round', diameter: mm(8), bit: '8 mm' },
  count,
  leftOut,
  height: mm(20),
  bearing: degrees(bearing),
})

describe('a row on its wall', () => {
  test('the arc pitch is πD/n: rows of can_seams_tinplate.json, circumference_division', () => {
    for (const { diameter, count, arc } of [
      { diameter: 100, count: 6, arc: 52.35988 },
      { diameter: 83, count: 8, arc: 32.59402 },
      { diameter: 157.1625, count: 24, arc: 20.57252 },
    ]) {
      const circumference = mm(Math.PI * diameter)
      const [first, second] = placeRow(row(count), circumference)
      expect(((second?.along ?? 0) - (first?.along ?? 0)) * 1000).toBeCloseTo(arc, 4)
      expect(closestPitch(row(count), circumference) * 1000).toBeCloseTo(arc, 4)
    }
  })

  test('left-out positions keep their number and are not drilled', () => {
    const placed = placeRow(row(8, [5], 10), mm(300))
    expect(placed.map(({ position }) => position)).toEqual([1, 2, 3, 4, 6, 7, 8])
    expect(placed.map(({ bearing }) => bearing)).toEqual([10, 55, 100, 145, 235, 280, 325])
    expect(drilledCount(row(8, [5]))).toBe(7)
  })

  test('positions and left-outs partition the row, inside one turn', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 60 })
          .chain((count) =>
            fc.tuple(
              fc.constant(count),
              fc.uniqueArray(fc.integer({ min: 1, max: count }), { maxLength: count - 1 }),
              fc.double({ min: -720, max: 720, noNaN: true }),
            ),
          ),
        ([count, leftOut, bearing]) => {
          const opening = row(count, leftOut, bearing)
          const placed = placeRow(opening, 0.3 as Metres)
          expect(placed).toHaveLength(drilledCount(opening))
          for (const { along, bearing: at } of placed) {
            expect(at).toBeGreaterThanOrEqual(0)
            expect(at).toBeLessThan(360)
            expect(along / 0.3).toBeCloseTo(at / 360, 12)
          }
        },
      ),
    )
  })

  test('the closest pitch sees across the front mark and past left-out holes', () => {
    expect(closestPitch(row(8, [2, 4, 6, 8]), mm(80)) * 1000).toBeCloseTo(20, 12)
    expect(closestPitch(row(8, [2, 3, 4, 5, 6, 7]), mm(80)) * 1000).toBeCloseTo(10, 12)
    expect(closestPitch(row(2, [2]), mm(80)) * 1000).toBeCloseTo(80, 12)
  })

  test('a slit lies along the axis or round the can', () => {
    const slit = { shape: 'slit', length: mm(20), width: mm(2) } as const
    expect(wallHoleSize({ ...slit, along: 'axis' })).toEqual({ round: mm(2), axial: mm(20) })
    expect(wallHoleSize({ ...slit, along: 'round' })).toEqual({ round: mm(20), axial: mm(2) })
  })

  test('a bearing just below zero does not become 360', () => {
    expect(wrapBearing(-1e-20)).toBe(0)
    expect(wrapBearing(-90)).toBe(270)
    expect(wrapBearing(720)).toBe(0)
  })
})
