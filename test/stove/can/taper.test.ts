import { describe, expect, it } from 'vitest'
import type { BadInput } from '#basis/problem.ts'
import { fromMillimetres } from '#basis/units.ts'
import { canCapacity } from '#stove/can/capacity.ts'
import { outsideAt, seamAt, topOpening, widestOutside } from '#stove/can/ends.ts'
import { type CanMeasurements, measuredCan } from '#stove/can/fromCode.ts'
import { bodyAt, narrowestInside, slantHeight, taperAngle } from '#stove/can/taper.ts'

const mm = (value: number) => ({ value: fromMillimetres(value), tolerance: fromMillimetres(0.5) })

const pail = (more: Partial<CanMeasurements> = {}) =>
  measuredCan({
    bodyDiameter: mm(90),
    topBodyDiameter: mm(110),
    height: mm(120),
    bodyWall: fromMillimetres(0.2),
    top: { kind: 'open' },
    ...more,
  })

const problemsOf = (make: () => unknown): readonly string[] => {
  try {
    make()
    return []
  } catch (error) {
    return (error as BadInput).problems.map(({ code, field }) => `${code} ${field}`)
  }
}

describe('a can that tapers', () => {
  it('is as wide at each height as a straight side makes it, and counts halfway up as its body', () => {
    const can = pail()
    expect(bodyAt(can, 0).value).toBeCloseTo(0.09, 12)
    expect(bodyAt(can, 0.03).value).toBeCloseTo(0.095, 12)
    expect(bodyAt(can, 0.12).value).toBeCloseTo(0.11, 12)
    expect(can.bodyDiameter.value).toBeCloseTo(0.1, 12)
    // A side 120 mm up and 10 mm out: 5-12-13 doubled.
    expect(slantHeight(can)).toBeCloseTo(Math.hypot(0.12, 0.01), 12)
    expect(taperAngle(can)).toBeCloseTo((Math.atan(1 / 12) * 180) / Math.PI, 9)
  })

  it('is fitted where it is tightest: inside at its narrow end, outside over its wide seam', () => {
    const can = pail()
    expect(narrowestInside(can).value).toBeCloseTo(0.0896, 12)
    expect(topOpening(can)?.value).toBeCloseTo(0.1096, 12)
    expect(widestOutside(can).value).toBeCloseTo(0.1127, 9)
    // The seam stands out equally far at both ends: 1.35 mm a side where nobody measured it.
    expect(seamAt(can, 'bottom').value).toBeCloseTo(0.0927, 9)
    expect(outsideAt(pail({ bottom: { kind: 'drawn' } }), 'bottom').value).toBeCloseTo(0.09, 12)
  })

  it('holds what a truncated cone holds', () => {
    const can = pail({ bottom: { kind: 'drawn' } })
    // Summed in thin slices, which is no formula of ours.
    let volume = 0
    const slices = 20_000
    for (let index = 0; index < slices; index += 1) {
      const inside = bodyAt(can, (0.12 * (index + 0.5)) / slices).value - 0.0004
      volume += ((Math.PI / 4) * inside ** 2 * 0.12) / slices
    }
    expect(canCapacity(can) / volume).toBeCloseTo(1, 8)
  })

  it('may narrow upwards too', () => {
    const can = pail({ bodyDiameter: mm(110), topBodyDiameter: mm(90) })
    expect(taperAngle(can)).toBeLessThan(0)
    expect(narrowestInside(can).value).toBeCloseTo(0.0896, 12)
    expect(topOpening(can)?.value).toBeCloseTo(0.0896, 12)
  })

  it('is refused where its side leans like a bowl’s, where it was measured at one edge only', () => {
    expect(problemsOf(() => pail({ topBodyDiameter: mm(170) }))).toEqual(['can.taper can.topBodyDiameter'])
    expect(
      problemsOf(() => measuredCan({ seamDiameter: mm(90), topBodyDiameter: mm(95), height: mm(100) })),
    ).toEqual(['can.taper-from can.bodyDiameter'])
    expect(problemsOf(() => pail({ topBodyDiameter: mm(0) }))).toContain('can.size can.topBodyDiameter')
  })

  it('that does not taper is the can it was', () => {
    const { taper, ...straight } = measuredCan({ bodyDiameter: mm(90), height: mm(120) })
    expect(taper).toBeUndefined()
    expect(straight.bodyDiameter.value).toBe(0.09)
  })
})
