import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BadInput } from '#basis/problem.ts'
import { metres, fromMillimetres as mm, toMillimetres } from '#basis/units.ts'
import { CAN_DEFAULTS, WALL_CLASSES } from '#stove/can/defaults.ts'
import {
  bodyInside,
  bottomOpening,
  floorHeight,
  outsideAt,
  topOpening,
  widestOutside,
} from '#stove/can/ends.ts'
import { FOOD_CANS } from '#stove/can/foodCans.ts'
import { canFromCode, measuredCan } from '#stove/can/fromCode.ts'
import type { Can, CanEnd, Measured } from '#stove/model.ts'

const measured = (value: number, tolerance = 0): Measured => ({ value: mm(value), tolerance: mm(tolerance) })

const problemsOf = (make: () => Can): readonly string[] => {
  try {
    make()
  } catch (error) {
    if (error instanceof BadInput) return error.problems.map(({ code, field }) => `${code} ${field}`)
    throw error
  }
  return []
}

describe('canFromCode', () => {
  test('takes the code’s figures as outside dimensions over the seam', () => {
    const can = canFromCode('603 x 700')
    expect(can.code).toBe('603x700')
    expect(toMillimetres(can.seamDiameter.value)).toBeCloseTo(157.1625, 9)
    expect(toMillimetres(can.height.value)).toBeCloseTo(177.8, 9)
    expect(can.bottom.kind).toBe('plain')
    expect(can.top.kind).toBe('plain')
  })

  test('puts the body inside the seam by the overhang, and owns to not knowing that better', () => {
    const can = canFromCode('404x700')
    const { seamOverhang, seamOverhangSpread, diameterTolerance } = CAN_DEFAULTS
    expect((can.seamDiameter.value - can.bodyDiameter.value) / 2).toBeCloseTo(seamOverhang.value, 12)
    expect(can.bodyDiameter.tolerance).toBeCloseTo(diameterTolerance.value + 2 * seamOverhangSpread.value, 12)
  })

  test('lets a measured body stand as measured', () => {
    const can = canFromCode('404x700', { bodyDiameter: measured(105.1, 0.1), top: { kind: 'open' } })
    expect(can.bodyDiameter).toEqual(measured(105.1, 0.1))
    expect(can.top.kind).toBe('open')
  })

  test('takes the body from a measured seam rather than from the code’s', () => {
    const can = canFromCode('404x700', { seamDiameter: measured(108.4, 0.1) })
    expect(toMillimetres(can.bodyDiameter.value)).toBeCloseTo(108.4 - 2 * 1.35, 9)
  })

  test('refuses a code that is none', () => {
    expect(problemsOf(() => canFromCode('619x700'))).toEqual(['size-code.sixteenths code'])
  })

  test('makes every can of the public table', () => {
    for (const { code } of FOOD_CANS) expect(problemsOf(() => canFromCode(code))).toEqual([])
  })

  test('keeps to the trade’s light gauge, up to 0.49 mm (ISO 90-1, scope)', () => {
    for (const { bodyWall, endWall } of WALL_CLASSES)
      for (const wall of [bodyWall, endWall]) expect(toMillimetres(wall)).toBeLessThanOrEqual(0.49)
  })
})

describe('measuredCan', () => {
  test('a drawn can trimmed at the top has no seam anywhere', () => {
    const can = measuredCan({
      bodyDiameter: measured(74, 0.2),
      height: measured(90, 0.5),
      bottom: { kind: 'drawn' },
      top: { kind: 'cut' },
    })
    expect(can.seamDiameter).toEqual(can.bodyDiameter)
    expect(widestOutside(can)).toEqual(can.bodyDiameter)
  })

  test('of body and seam either gives the other', () => {
    fc.assert(
      fc.property(fc.double({ min: 40, max: 300, noNaN: true }), (across) => {
        const seam = measuredCan({ bodyDiameter: measured(across), height: measured(100) }).seamDiameter
        const body = measuredCan({ seamDiameter: seam, height: measured(100) }).bodyDiameter
        expect(toMillimetres(body.value)).toBeCloseTo(across, 9)
      }),
    )
  })

  test('needs a diameter', () => {
    expect(problemsOf(() => measuredCan({ height: measured(100) }))).toEqual([
      'can.no-diameter can.seamDiameter',
    ])
  })

  const base = { seamDiameter: measured(108, 0.5), height: measured(100, 0.5) }
  test.each([
    ['can.size can.height', { ...base, height: measured(0) }],
    ['can.size can.height', { ...base, height: { value: metres(Number.NaN), tolerance: mm(0) } }],
    ['can.size can.seamDiameter', { ...base, seamDiameter: measured(-108) }],
    ['can.size can.seamDiameter', { ...base, seamDiameter: { value: metres(Infinity), tolerance: mm(0) } }],
    ['can.size can.bodyWall', { ...base, bodyWall: mm(0) }],
    ['can.tolerance can.height.tolerance', { ...base, height: measured(100, -1) }],
    ['can.tolerance can.height.tolerance', { ...base, height: measured(100, 100) }],
    ['can.body-over-seam can.bodyDiameter', { ...base, bodyDiameter: measured(110, 0.5) }],
    ['can.wall can.bodyWall', { ...base, bodyWall: mm(60) }],
    [
      'can.countersink can.bottom.countersink',
      { ...base, bottom: { kind: 'plain', countersink: mm(-1) } as CanEnd },
    ],
    [
      'can.opening can.top.opening',
      { ...base, top: { kind: 'friction', opening: measured(107, 0.5) } as CanEnd },
    ],
    ['can.size can.top.opening', { ...base, top: { kind: 'pull-off', opening: measured(0) } as CanEnd }],
    ['can.height can.height', { ...base, height: measured(6) }],
    ['can.bead can.beads.0', { ...base, beads: [{ from: mm(30), to: mm(20) }] }],
    ['can.bead can.beads.0', { ...base, beads: [{ from: mm(90), to: mm(101) }] }],
  ])('refuses %s', (problem, known) => {
    expect(problemsOf(() => measuredCan(known))).toEqual([problem])
  })
})

describe('ends', () => {
  const withTop = (top: CanEnd): Can =>
    measuredCan({
      seamDiameter: measured(108, 0.3),
      bodyDiameter: measured(105.4, 0.2),
      height: measured(120, 0.5),
      bodyWall: mm(0.2),
      top,
    })

  test.each<[CanEnd, number | null, number]>([
    [{ kind: 'plain', countersink: mm(3.2) }, null, 108],
    [{ kind: 'drawn' }, null, 105.4],
    [{ kind: 'pull-off', opening: measured(98, 0.3) }, 98, 108],
    [{ kind: 'friction', opening: measured(88, 0.3) }, 88, 108],
    // 105.4 − 2 × 0.2
    [{ kind: 'open' }, 105, 108],
    [{ kind: 'cut' }, 105, 105.4],
  ])('%j: clear opening %j mm, %f mm outside', (top, opening, outside) => {
    const can = withTop(top)
    const clear = topOpening(can)
    if (opening === null) expect(clear).toBeNull()
    else expect(toMillimetres(clear!.value)).toBeCloseTo(opening, 9)
    expect(toMillimetres(outsideAt(can, 'top').value)).toBeCloseTo(outside, 9)
    expect(bottomOpening(can)).toBeNull()
    const turned = { ...can, top: can.bottom, bottom: can.top }
    expect(bottomOpening(turned)).toEqual(clear)
    expect(topOpening(turned)).toBeNull()
  })

  test('inside of the body is as uncertain as its outside', () => {
    expect(bodyInside(withTop({ kind: 'cut' })).tolerance).toBe(mm(0.2))
  })

  test.each<[CanEnd, number | null]>([
    [{ kind: 'plain', countersink: mm(3.4) }, 3.4],
    [{ kind: 'drawn' }, 0],
    [{ kind: 'open' }, null],
    [{ kind: 'cut' }, null],
    [{ kind: 'pull-off', opening: measured(90) }, null],
    [{ kind: 'friction', opening: measured(90) }, null],
  ])('%j: floor at %j mm', (bottom, height) => {
    const floor = floorHeight({ ...withTop({ kind: 'open' }), bottom })
    if (height === null) expect(floor).toBeNull()
    else expect(toMillimetres(floor!)).toBeCloseTo(height, 9)
  })
})
