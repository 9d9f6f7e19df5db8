import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { damperFreeShare } from '#science/draft/damper.ts'
import { placeParts } from '#stove/assembly/place.ts'
import type { RowOpening, Stove } from '#stove/model.ts'
import { band, changed, dampered, round, rowOf } from '../layouts.ts'
import { can, canPart, place, plain, ring, row, twoWall } from '../stoves.ts'

/** What the damper leaves free of the intake. */
const freeShare = (stove: Stove): number | null => {
  const placed = orThrow(placeParts(stove))
  const host = placed.find(({ name }) => name === 'shell')
  const damper = placed.find(({ name }) => name === 'damper')
  if (host === undefined || damper === undefined) throw new Error('no shell or no damper')
  return damperFreeShare(host.part.openings.get('intake') as RowOpening, host, damper)
}

/** 10 holes: 36° from one to the next. */
const PITCH = 36

describe('a damper with a window for every hole', () => {
  test('in line leaves the whole row', () => {
    expect(freeShare(dampered(0))).toBeCloseTo(1, 12)
  })

  test('half a pitch on shuts it', () => {
    expect(freeShare(dampered(PITCH / 2))).toBe(0)
  })

  test.each([1.5, 4, 7.3, 11, 30])('turned by %d° leaves as much as turned the other way', (angle) => {
    expect(freeShare(dampered(angle))).toBeCloseTo(freeShare(dampered(-angle)) as number, 12)
  })

  test.each([0, 3, 8, 20])('turned by %d° leaves as much as one pitch further', (angle) => {
    expect(freeShare(dampered(angle + PITCH))).toBeCloseTo(freeShare(dampered(angle)) as number, 10)
  })

  test('the further from open, the less is free, down to shut', () => {
    const shares = [0, 2, 4, 6, 8, 10, 12, 14, 18].map((angle) => freeShare(dampered(angle)) as number)
    for (const [i, share] of shares.entries())
      if (i > 0) expect(share).toBeLessThanOrEqual(shares[i - 1] as number)
    expect(shares.at(-1)).toBe(0)
  })

  // Lens of two circles of 12 mm on a can of 112 mm: d = angle/360 · π · 112 mm.
  test.each([2, 5, 9])('turned by %d° leaves the lens of two circles', (angle) => {
    const r = 6
    const d = (angle / 360) * Math.PI * 112
    const lens = 2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d)
    expect(freeShare(dampered(angle))).toBeCloseTo(lens / (Math.PI * r * r), 9)
  })
})

describe('other dampers', () => {
  const withBand = (windows: RowOpening, raised = 7, height = 30): Stove =>
    changed(twoWall(), { damper: band(height, { windows }) }, [
      ...twoWall().assembly,
      place('damper', 'slips over', 'shell', raised),
    ])

  test('a band that does not reach over the row leaves it alone', () => {
    expect(freeShare(withBand(row('intake', 10, 12, 15), 60))).toBeNull()
  })

  test('a band without windows shuts the row', () => {
    const stove = changed(twoWall(), { damper: band(30, {}) }, [
      ...twoWall().assembly,
      place('damper', 'slips over', 'shell', 7),
    ])
    expect(freeShare(stove)).toBe(0)
  })

  test('windows that miss the height of the row shut it', () => {
    expect(freeShare(withBand(row('intake', 10, 3, 27)))).toBe(0)
  })

  test('windows for half the holes leave half', () => {
    expect(freeShare(withBand(row('intake', 5, 12, 15)))).toBeCloseTo(0.5, 12)
  })

  test('a hole that was never drilled counts on neither side', () => {
    const shell = canPart('shell', can(112, 140, plain, ring(92)), {
      intake: rowOf('intake', 10, round(12), 22, { leftOut: [2, 5] }),
    })
    expect(freeShare(changed(dampered(0), { shell }))).toBeCloseTo(1, 12)
  })

  test('a window that is left out shuts its hole', () => {
    expect(freeShare(withBand(rowOf('intake', 10, round(12), 15, { leftOut: [1] })))).toBeCloseTo(0.9, 12)
  })

  test('the hole across the front mark counts like any other', () => {
    const turned = (bearing: number): Stove =>
      changed(withBand(row('intake', 10, 12, 15, bearing)), {
        shell: canPart('shell', can(112, 140, plain, ring(92)), {
          intake: row('intake', 10, 12, 22, bearing),
        }),
      })
    for (const bearing of [0, 359.9, 180, -7]) expect(freeShare(turned(bearing))).toBeCloseTo(1, 9)
  })
})
