import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { degrees, fromMillimetres as mm, toMillimetres } from '#basis/units.ts'
import { canFromCode } from '#stove/can/fromCode.ts'
import { distanceToSideSeam, seamZones, sideSeamZone, wallZones } from '#stove/can/zones.ts'
import type { Can } from '#stove/model.ts'

const height = { value: mm(120), tolerance: mm(0.5) }
const told = (can: Can) =>
  wallZones(can).map(({ from, to, why }) => [
    Number(toMillimetres(from).toFixed(6)),
    Number(toMillimetres(to).toFixed(6)),
    why,
  ])

describe('wallZones', () => {
  test('a can with both ends seamed, from the bottom up', () => {
    const can = canFromCode('404x700', { height, seamHeight: mm(3), beads: [{ from: mm(40), to: mm(60) }] })
    expect(told(can)).toEqual([
      [0, 3, 'seam'],
      [40, 60, 'bead'],
      [117, 120, 'seam'],
    ])
    expect(seamZones(can).map(({ to }) => toMillimetres(to))).toEqual([3, 120])
  })

  test('an end cut out along the wall leaves its seam', () => {
    expect(told(canFromCode('404x700', { height, seamHeight: mm(3), top: { kind: 'open' } }))).toContainEqual(
      [117, 120, 'seam'],
    )
  })

  test('a trimmed edge is an edge and no more; a drawn bottom has its corner', () => {
    const can = canFromCode('404x700', { height, bottom: { kind: 'drawn' }, top: { kind: 'cut' } })
    expect(told(can)).toEqual([
      [0, 2.5, 'edge'],
      [120, 120, 'edge'],
    ])
    expect(seamZones(can)).toEqual([])
  })
})

describe('the side seam', () => {
  // Body 105.3 mm: 5 mm of its 330.8 mm is 5.44°.
  const can = (bearing: number | null) =>
    canFromCode('404x700', {
      bodyDiameter: { value: mm(105.3), tolerance: mm(0) },
      sideSeam: bearing === null ? null : degrees(bearing),
    })

  test('is a stretch of bearings as wide as the weld', () => {
    const zone = sideSeamZone(can(90), mm(5))!
    const span = (5 / (Math.PI * 105.3)) * 360
    expect(zone.from).toBeCloseTo(90 - span / 2, 9)
    expect(zone.to).toBeCloseTo(90 + span / 2, 9)
  })

  test('may pass the front mark', () => {
    const zone = sideSeamZone(can(1), mm(5))!
    expect(zone.from).toBeGreaterThan(357)
    expect(zone.to).toBeGreaterThan(360)
  })

  test('is nowhere on a can that has none or whose seam nobody found', () => {
    expect(sideSeamZone(can(null))).toBeNull()
    expect(distanceToSideSeam(can(null), degrees(10))).toBeNull()
  })

  test('is half the can away at most, the same both ways round, and 0 on itself', () => {
    const half = (Math.PI * 0.1053) / 2 - 0.0025
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 0, max: 180, noNaN: true }),
        (seam, turn) => {
          const one = distanceToSideSeam(can(seam), degrees(seam + turn), mm(5))!
          const other = distanceToSideSeam(can(seam), degrees(seam - turn), mm(5))!
          expect(one).toBeCloseTo(other, 9)
          expect(one).toBeLessThanOrEqual(half + 1e-12)
          const inZone = turn <= ((5 / (Math.PI * 105.3)) * 360) / 2 - 1e-9
          if (inZone) expect(one).toBeCloseTo(0, 9)
          else expect(one).toBeCloseTo(Math.max(0, (turn / 360) * Math.PI * 0.1053 - 0.0025), 9)
        },
      ),
    )
  })
})
