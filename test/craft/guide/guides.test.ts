import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { degrees, fromMillimetres, toMillimetres } from '#basis/units.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import type { DrillGuide, GuideHole } from '#craft/guide/guide.ts'
import { bedBox, drillGuides } from '#craft/guide/guides.ts'
import { GUIDE_DEFAULTS, type GuideOptions } from '#craft/guide/options.ts'
import { writeStl } from '#craft/mesh/stl.ts'
import { boundsOf, type Mesh, posed } from '#craft/solid/mesh.ts'
import type { Stove } from '#stove/model.ts'
import { needs } from '../../outsideProgram.ts'
import { python } from '../mesh/python.ts'
import { anyStove } from '../randomStoves.ts'
import { admesh } from '../solid/admesh.ts'
import { openEdges } from '../solid/closed.ts'
import { example, examples } from '../solid/stoves.ts'
import { bareShell, can, canPart, place, round, row, stove, testStoves } from '../stoves.ts'

const kernel = await solidKernel()
const script = new URL('findHoles.py', import.meta.url)

const guidesOf = (one: Stove, options: Partial<GuideOptions> = {}): readonly DrillGuide[] =>
  drillGuides(kernel, one, { ...GUIDE_DEFAULTS, ...options }).guides

interface Found {
  readonly holes: readonly { readonly bearing: number; readonly at: number; readonly radius: number }[]
  readonly inside?: number
  readonly outside?: number
}

const LIP = 2

const readBack = (guide: DrillGuide): Found => {
  const stl = writeStl(guide.pieces, 'Tinwright')
  const wall = toMillimetres(GUIDE_DEFAULTS.wall)
  return guide.kind === 'collar'
    ? python<Found>(script, stl, 'collar', String(guide.fitDiameter / 2 + wall / 2), String(LIP + 0.01))
    : python<Found>(script, stl, 'disc', String(wall / 2))
}

/** Between where a hole should be and where it was found, at the inside of the guide [mm]. */
const apart = (guide: DrillGuide, hole: GuideHole, found: Found['holes'][number]): number => {
  const turn = ((((found.bearing - hole.printedBearing + 180) % 360) + 360) % 360) - 180
  const arc = (turn * Math.PI) / 180
  return guide.kind === 'collar'
    ? Math.hypot((arc * guide.fitDiameter) / 2, found.at - hole.printedAt)
    : Math.hypot(found.at - hole.printedAt * Math.cos(arc), hole.printedAt * Math.sin(arc))
}

const sound = [...examples, ...testStoves.map((make) => make())]
const named = sound.map((one) => [one.name, one] as const)

describe.for(named)('guides of %s', ([, one]) => {
  it('are closed, one part a piece, with nothing for admesh to mend', (context) => {
    needs(context, 'admesh')
    for (const guide of guidesOf(one))
      for (const piece of guide.pieces) {
        expect([piece.name, openEdges(piece)]).toEqual([piece.name, 0])
        const { volume, ...said } = admesh(writeStl([piece], 'Tinwright'))
        expect([piece.name, said]).toEqual([piece.name, { parts: 1, disconnected: 0, repairs: 0 }])
        expect(volume).toBeGreaterThan(0)
      }
  })

  it('have every guide hole within 0.05 mm of its place, read back from STL', (context) => {
    needs(context, 'python3')
    for (const guide of guidesOf(one)) {
      const found = readBack(guide)
      // As many as there should be, and each where it should be: positions left out stay closed.
      expect([guide.name, found.holes.length]).toEqual([guide.name, guide.holes.length])
      for (const hole of guide.holes) {
        const nearest = found.holes.reduce((best, other) =>
          apart(guide, hole, other) < apart(guide, hole, best) ? other : best,
        )
        expect([hole.opening, hole.position, apart(guide, hole, nearest) < 0.05]).toEqual([
          hole.opening,
          hole.position,
          true,
        ])
        // Its sides touch the bit's circle from outside.
        expect(nearest.radius).toBeGreaterThan(hole.diameter / 2 - 1e-3)
        expect(nearest.radius).toBeLessThan(hole.diameter / 2 + 0.03)
      }
    }
  })

  it('go over, or into, the largest can of its tolerance with the printer’s clearance', (context) => {
    needs(context, 'python3')
    for (const guide of guidesOf(one)) {
      const { inside, outside } = readBack(guide)
      const { diameter, tolerance } = guide.measured
      if (guide.kind === 'collar') expect(2 * inside!).toBeGreaterThan(diameter + tolerance + 0.3 - 1e-3)
      else if (guide.fitDiameter > diameter) expect(2 * outside!).toBeGreaterThan(diameter + tolerance + 0.3)
    }
  })

  it('stand on the bed and fit on it', () => {
    for (const guide of guidesOf(one))
      for (const piece of guide.pieces) {
        expect(boundsOf([piece]).min[2]).toBeCloseTo(0, 4)
        const [long, short, high] = bedBox(piece)
        expect(Math.max(long, short)).toBeLessThanOrEqual(220)
        expect(high).toBeLessThanOrEqual(250)
      }
  })

  it('are the same bytes each time', () => {
    const bytes = () =>
      guidesOf(one).map((guide) => Buffer.from(writeStl(guide.pieces, 'x')).toString('base64'))
    expect(bytes()).toEqual(bytes())
  })
})

describe('a collar', () => {
  const collarOf = (name: string, part: string): DrillGuide =>
    guidesOf(example(name)).find((guide) => guide.kind === 'collar' && guide.part === part)!

  it('has no hole at a position that is left out', () => {
    const positions = collarOf('Redshank', 'shell').holes.map(({ position }) => position)
    expect(positions).toEqual([1, 2, 3, 4, 5, 6, 8, 9, 10, 11, 12])
  })

  it('comes in halves where both ends have a seam it cannot pass, in one piece where one has none', () => {
    expect(collarOf('Redshank', 'shell').pieces.length).toBe(2)
    expect(collarOf('Redshank', 'fuel can').pieces.length).toBe(1)
    expect(collarOf('Heron', 'fuel can').pieces.length).toBe(2)
  })

  it('is set by the nearer edge: holes high up are measured down from the top', () => {
    const upper = guidesOf(example('Heron')).find(({ name }) => name.includes('upper holes of fuel can'))!
    for (const { at, printedAt } of upper.holes) expect(at + printedAt).toBeCloseTo(177.8, 9)
  })

  it('guides the drilled foot of a window with a round foot, and says why others have no guide', () => {
    const { guides, without } = drillGuides(kernel, example('Redshank'), GUIDE_DEFAULTS)
    const feet = guides.flatMap(({ holes }) => holes).filter(({ opening }) => opening === 'windows')
    // 18 mm below the top of 88 mm is the middle of 22 mm; the foot's middle is 9 mm above its lower end.
    for (const { at } of feet) expect(at).toBeCloseTo(88 - 18 - 11 + 9, 9)
    expect(feet.length).toBe(6)
    expect(without.map(({ part, opening }) => `${part} ${opening}`)).toEqual([
      'concentrator vanes',
      'damper windows',
    ])
  })

  it('takes the bit of each hole’s own size when asked', () => {
    const [collar] = guidesOf(example('Redshank'), { bit: 'full' })
    expect(new Set(collar!.holes.map(({ diameter }) => diameter))).toEqual(new Set([12.2]))
  })

  it('is parted further for a small bed, every piece fitting, and refused in a sentence for a tiny one', () => {
    const bed = (side: number): GuideOptions['bed'] => ({
      width: fromMillimetres(side),
      depth: fromMillimetres(side),
      height: fromMillimetres(200),
    })
    const small = drillGuides(kernel, example('Redshank'), { ...GUIDE_DEFAULTS, bed: bed(100) })
    const collar = small.guides.find(({ kind, part }) => kind === 'collar' && part === 'shell')!
    expect(collar.pieces.length).toBeGreaterThan(2)
    for (const piece of collar.pieces) expect(Math.max(...bedBox(piece))).toBeLessThanOrEqual(100)
    const tiny = drillGuides(kernel, example('Redshank'), { ...GUIDE_DEFAULTS, bed: bed(45) })
    expect(tiny.guides.length).toBe(0)
    expect(new Set(tiny.refused.map(({ code }) => code))).toEqual(new Set(['guide.bed']))
  })

  it('has its ears above the holes where these stand close, and none where there is no room', () => {
    const close = (count: number, height: number): Stove =>
      bareShell(
        100,
        { ring: row(round(4), count, 20) },
        { height: { value: fromMillimetres(height), tolerance: fromMillimetres(0.5) } },
      )
    const [above] = guidesOf(close(30, 120))
    expect(above!.pieces.length).toBe(2)
    expect(above!.box[2]).toBeGreaterThan(40)
    const { guides, refused } = drillGuides(kernel, close(30, 45), GUIDE_DEFAULTS)
    expect(guides).toEqual([])
    expect(refused.map(({ code }) => code)).toEqual(['guide.split'])
  })

  it('slips over a can without seams, which stands on its lip', (context) => {
    needs(context, 'python3')
    const bare = { bottom: { kind: 'cut' as const }, top: { kind: 'cut' as const }, sideSeam: degrees(100) }
    const one = stove(
      'Bare',
      { wall: canPart('riser', can(80, 120, bare), { ring: row(round(8), 8, 25) }) },
      [place('wall', 'on ground', null)],
    )
    const [collar] = guidesOf(one)
    expect(collar!.pieces.length).toBe(1)
    const { holes } = readBack(collar!)
    for (const { at } of holes) expect(at).toBeCloseTo(25 + LIP, 2)
  })
})

describe('a guide put on its part', () => {
  /** A guide hole as it is printed, and the same place on the part: one point each [mm]. */
  const pointOf = (bearing: number, across: number, z: number): Mesh => ({
    name: '',
    positions: Float32Array.of(
      across * Math.sin((bearing * Math.PI) / 180),
      across * Math.cos((bearing * Math.PI) / 180),
      z,
    ),
    triangles: new Uint32Array(),
  })

  it('has its holes over the holes of the part, turned over or not', () => {
    let turnedOver = 0
    for (const one of sound)
      for (const guide of guidesOf(one))
        for (const hole of guide.holes) {
          const part = one.parts.get(guide.part)!
          const height = part.form === 'can' ? toMillimetres(part.can.height.value) : 0
          const across = guide.kind === 'collar' ? guide.fitDiameter / 2 : hole.at
          const printed = pointOf(hole.printedBearing, across, guide.kind === 'collar' ? hole.printedAt : 0)
          const wanted = pointOf(hole.bearing, across, guide.kind === 'collar' ? hole.at : 0).positions
          // A rigid thing only: a mirrored guide would fit neither way.
          const ways = [
            printed,
            posed(printed, { upsideDown: true, z: guide.kind === 'collar' ? height : 0 }),
          ]
          const misses = ways.map(({ positions: [x, y, z] }) =>
            Math.hypot(
              x! - wanted[0]!,
              y! - wanted[1]!,
              guide.kind === 'collar' ? (z! - wanted[2]!) % LIP : 0,
            ),
          )
          expect(Math.min(...misses)).toBeLessThan(1e-3)
          if (misses[1]! < misses[0]!) turnedOver += 1
        }
    expect(turnedOver).toBeGreaterThan(20)
  })
})

it('guides of 60 stoves drilled anyhow are closed and fit on the bed, or are refused', {
  timeout: 600_000,
}, () => {
  const codes = new Set<string>()
  for (const one of fc.sample(anyStove, { numRuns: 60, seed: 5 })) {
    const { guides, refused } = drillGuides(kernel, one, GUIDE_DEFAULTS)
    for (const { code, fix } of refused) {
      codes.add(code)
      expect(fix).toMatch(/\.$/)
    }
    for (const piece of guides.flatMap((guide) => guide.pieces)) {
      expect([one.name, piece.name, openEdges(piece)]).toEqual([one.name, piece.name, 0])
      expect(Math.max(...bedBox(piece).slice(0, 2))).toBeLessThanOrEqual(220)
    }
  }
  expect(codes.size).toBeGreaterThan(2)
})
