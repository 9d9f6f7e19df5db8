import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { placeParts } from '#stove/assembly/place.ts'
import { wrapBearing } from '#stove/opening/row.ts'
import { arcPath, bearingOf, planDamper, planHoles, planPoint, planRows, planWalls } from '#web/above/plan.ts'
import { example, exampleNames } from '../../science/burn/firing.ts'

describe('a bearing from above', () => {
  test('runs clockwise from the front, which is at the bottom: 90° is on the left, as in the section', () => {
    const near = (bearing: number) => {
      const { x, y } = planPoint(10, bearing)
      return [Math.round(x) + 0, Math.round(y) + 0]
    }
    expect([0, 90, 180, 270].map(near)).toEqual([
      [0, 10],
      [-10, 0],
      [0, -10],
      [10, 0],
    ])
  })

  test('comes back from its place', () => {
    fc.assert(
      fc.property(fc.double({ min: -720, max: 720, noNaN: true }), (bearing) => {
        const back = bearingOf(planPoint(37, bearing))
        const apart = wrapBearing(back - bearing + 180) - 180
        expect(Math.abs(apart)).toBeLessThan(1e-9)
      }),
    )
  })

  test('an arc begins and ends where its bearings are', () => {
    expect(arcPath({ x: 100, y: 100 }, 50, 0, 90)).toBe('M100.00 150.00A50.00 50.00 0 0 1 50.00 100.00')
    expect(arcPath({ x: 0, y: 0 }, 50, 0, 270)).toContain(' 0 1 1 ')
  })
})

describe.each(exampleNames)('%s from above', (name) => {
  const stove = example(name)
  const placed = orThrow(placeParts(stove))

  test('shows its cans from the outside in', () => {
    const radii = planWalls(placed).map(({ radius }) => radius)
    expect(radii).toEqual([...radii].sort((a, b) => b - a))
  })

  test('has every place of every row that lets air through, left-out ones undrilled', () => {
    const rows = planRows(placed)
    expect(rows.some(({ row }) => row.duty === 'fixing')).toBe(false)
    for (const row of rows) {
      const holes = planHoles(row)
      expect(holes).toHaveLength(row.row.count)
      expect(holes.filter(({ drilled }) => !drilled).map(({ place }) => place)).toEqual(row.row.leftOut)
      expect(wrapBearing((holes[0]?.bearing ?? 0) - row.turned - row.row.bearing)).toBeCloseTo(0, 9)
    }
  })

  test('has a damper where the stove has one', () => {
    const damper = planDamper(placed)
    expect(damper !== null).toBe([...stove.parts.values()].some(({ role }) => role === 'damper'))
    if (damper !== null) expect(damper.windows.length).toBeGreaterThan(0)
  })
})
