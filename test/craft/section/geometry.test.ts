import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { degrees } from '#basis/units.ts'
import { sectionGeometry } from '#craft/section/geometry.ts'
import { rayHoles } from '#craft/section/ray.ts'
import { round, rowOf } from '../../science/layouts.ts'
import { floorHoles, twoWall } from '../../science/stoves.ts'
import { subjects } from './scenes.ts'

const cut = (stove = twoWall(), front = 0) => orThrow(sectionGeometry(stove, front))

describe('the two-wall stove of the tests, cut open', () => {
  const section = cut()
  const wall = (part: string) => section.walls.find((one) => one.part === part)

  test('has its shell wall in three pieces round a 12 mm hole at 22 mm', () => {
    // By hand: body 112 mm of 0.2 mm tin, 140 mm high; the hole reaches from 16 to 28 mm.
    const shell = wall('shell')
    expect(shell?.radius).toBeCloseTo(55.9, 9)
    expect(shell?.pieces.map((piece) => piece.map(({ z }) => z))).toEqual([
      [0, 16],
      [28, 140],
    ])
  })

  test('hangs its fuel can from the shell’s rim', () => {
    // 118 mm high, hung flush with 140 mm: bottom edge at 22 mm; the 6 mm row at 104 mm lies at 126 mm.
    const can = wall('fuel can')
    expect(can?.reach.from).toBeCloseTo(22, 9)
    expect(can?.holes.map(({ opening, from, to }) => [opening, from, to])).toEqual([
      ['secondary', expect.closeTo(123, 9), expect.closeTo(129, 9)],
    ])
  })

  test('cuts the bore out of the concentrator', () => {
    const plate = section.plates.find(({ part }) => part === 'concentrator')
    expect(plate?.pieces).toEqual([{ from: 22, to: 52 }])
  })

  test('rolls each seam outside its wall', () => {
    const rolls = wall('shell')?.seams
    // Friction ring above, seamed bottom below, 3 mm high, 1.3 mm beyond the body.
    expect(rolls?.map(({ reach }) => [reach.from, reach.to])).toEqual([
      [0, 3],
      [137, 140],
    ])
    expect(rolls?.every(({ inner, outer }) => Math.abs(outer - inner - 1.3) < 1e-9)).toBe(true)
  })

  test('stands the pot on the pot stand', () => {
    // Shell 140, concentrator 0.25, stand 70 mm.
    expect(section.pot).toEqual({ radius: 80, bottom: expect.closeTo(210.25, 9) })
  })
})

describe('what is seen behind the cut', () => {
  test('is a row’s own places, mirrored as an eye at the front sees them', () => {
    const row = rowOf('intake', 4, round(10), 12, { bearing: 150, leftOut: [2, 3, 4] })
    const [hole] = cut(twoWall({ intake: row })).farHoles.filter(({ part }) => part === 'shell')
    const middle = (hole?.outline ?? []).reduce((sum, { x }) => sum + x, 0) / (hole?.outline.length ?? 1)
    // Bearing 150 runs clockwise from the front: behind, on the eye's left, sin 150° of the radius out.
    expect(middle).toBeLessThan(-0.4 * 55.9)
    expect(middle).toBeGreaterThan(-0.6 * 55.9)
  })

  test('leaves out what the fuel and the inner can hide', () => {
    const hidden = cut(twoWall({ intake: rowOf('intake', 12, round(8), 80) }))
    expect(
      hidden.farHoles.filter(
        ({ part, outline }) => part === 'shell' && outline.some(({ x }) => Math.abs(x) < 45),
      ),
    ).toEqual([])
  })

  test('turns with the part', () => {
    const row = rowOf('intake', 1, round(10), 12, { bearing: 180 })
    const stove = twoWall({ intake: row })
    const assembly = stove.assembly.map((placement) =>
      placement.part === 'shell' ? { ...placement, turned: degrees(40) } : placement,
    )
    const x = (of: typeof stove) =>
      cut(of).farHoles.find(({ part }) => part === 'shell')?.outline[6]?.x ?? Number.NaN
    // 220° from the front: right of the middle, on the eye's right.
    expect(x(stove)).toBeCloseTo(0, 0)
    expect(x({ ...stove, assembly })).toBeGreaterThan(20)
  })
})

describe('a floor pattern turned into the cut', () => {
  const pattern = floorHoles(37, 4, 38)
  const holes = pattern.kind === 'pattern' ? rayHoles(pattern) : []

  test('keeps true radii and sizes, and no two holes run together', () => {
    expect(holes.length).toBeGreaterThan(2)
    const radii = pattern.kind === 'pattern' ? pattern.holes.map(({ radius }) => radius * 1000) : []
    for (const [i, { middle, from, to }] of holes.entries()) {
      expect(radii.some((radius) => Math.abs(radius - middle) < 1e-9)).toBe(true)
      expect(to - from).toBeCloseTo(4, 9)
      expect(from - (holes[i - 1]?.to ?? Number.NEGATIVE_INFINITY)).toBeGreaterThan(3)
    }
  })
})

describe('the fuel bed', () => {
  const bedAt = (front: number) => cut(twoWall(), front).bed

  test('is all raw when lit and all char at the floor', () => {
    const lit = bedAt(0)
    expect(lit?.char).toEqual([])
    expect(lit?.front).toBe(lit?.filledTo)
    const burnt = bedAt(1)
    expect(burnt?.front).toBe(burnt?.floor)
    expect(burnt?.raw).toEqual([])
  })

  test('has its front halfway between floor and fuel line, and char that has settled', () => {
    const bed = bedAt(0.5)
    // Floor 3.2 mm up in a can whose edge is at 22 mm; 65 mm of fuel.
    expect(bed?.floor).toBeCloseTo(25.2, 9)
    expect(bed?.front).toBeCloseTo(25.2 + 32.5, 9)
    expect(bed?.top).toBeLessThan(bed?.filledTo ?? 0)
  })

  test('of pellets has no two in one place', () => {
    const rods = bedAt(0)?.raw ?? []
    // Points along the middle of each rod, a millimetre apart.
    const lines = rods.map(({ middle, angle, length, width }) => {
      const half = Math.max(0, length - width) / 2
      const steps = Math.max(1, Math.ceil(2 * half))
      return Array.from({ length: steps + 1 }, (_, i) => {
        const t = half * ((2 * i) / steps - 1)
        return { x: middle.x + t * Math.cos(angle), z: middle.z + t * Math.sin(angle), radius: width / 2 }
      })
    })
    const nearest = (a: (typeof lines)[number], b: (typeof lines)[number]): number =>
      Math.min(...a.flatMap((p) => b.map((q) => Math.hypot(p.x - q.x, p.z - q.z) - p.radius - q.radius)))
    const gaps = lines.flatMap((a, i) => lines.slice(i + 1).map((b) => nearest(a, b)))
    expect(Math.min(...gaps)).toBeGreaterThan(0)
  })

  test.each(subjects)('of $name keeps its pieces inside the can', ({ stove }) => {
    const bed = cut(stove, 0.4).bed
    if (bed === null) throw new Error('no bed')
    expect(bed.raw.length).toBeGreaterThan(5)
    for (const { middle, angle, length, width } of [...bed.raw, ...bed.char]) {
      const aside = (Math.abs(Math.cos(angle)) * (length - width) + width) / 2
      expect(Math.abs(middle.x) + aside).toBeLessThan(bed.radius + 1)
      expect(middle.z).toBeGreaterThan(bed.floor)
    }
  })
})

describe.each(subjects)('the tin of $name', ({ stove }) => {
  const section = cut(stove)

  test('and its holes make up every wall', () => {
    for (const { pieces, holes, reach } of section.walls) {
      const tin = pieces.reduce((sum, piece) => sum + (piece.at(-1)?.z ?? 0) - (piece[0]?.z ?? 0), 0)
      const separate = holes.every(({ from }, i) => from >= (holes[i - 1]?.to ?? reach.from))
      if (separate) {
        const open = holes.reduce((sum, { from, to }) => sum + to - from, 0)
        expect(tin + open).toBeCloseTo(reach.to - reach.from, 6)
      } else expect(tin).toBeLessThan(reach.to - reach.from)
    }
  })

  test('keeps what is seen behind within the walls', () => {
    for (const { part, outline } of section.farHoles) {
      const radius = section.walls.find((wall) => wall.part === part)?.radius ?? 0
      expect(outline.every(({ x }) => Math.abs(x) <= radius + 1e-9)).toBe(true)
    }
  })
})
