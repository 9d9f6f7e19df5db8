import { describe, expect, it } from 'vitest'
import { solidKernel } from '#cli/solidKernel.ts'
import type { Point } from '#craft/drawing.ts'
import { drawSvg } from '#craft/pdf/svg/drawSvg.ts'
import { arranged } from '#craft/solid/arrange.ts'
import { type Mesh, posed } from '#craft/solid/mesh.ts'
import { stoveSolids } from '#craft/solid/solids.ts'
import { readPathData } from '#craft/svg/pathData.ts'
import { readSvg, type SvgNode } from '#craft/svg/read.ts'
import { viewSvg } from '#craft/view/svg.ts'
import { type View, viewOf } from '#craft/view/view.ts'
import { examples } from '../solid/stoves.ts'

const kernel = await solidKernel()

/** A closed box between two corners [mm]. */
const box = (name: string, low: readonly number[], high: readonly number[]): Mesh => {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((n) =>
    [0, 1, 2].map((axis) => ((n >> axis) & 1 ? high[axis] : low[axis]) as number),
  )
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ] as const
  return {
    name,
    positions: Float32Array.from(corners),
    triangles: Uint32Array.from(quads.flatMap(([a, b, c, d]) => [a, b, c, a, c, d])),
  }
}

const FIT = { width: 100, height: 100 }
const FRONT = { bearing: 0, elevation: 0 }

const lengthOf = (points: readonly Point[]): number =>
  points.reduce((sum, { x, y }, index) => {
    const before = points[index - 1]
    return before === undefined ? 0 : sum + Math.hypot(x - before.x, y - before.y)
  }, 0)

const drawn = (view: View, part: string): number =>
  view.lines.filter((line) => line.part === part).reduce((sum, { points }) => sum + lengthOf(points), 0)

describe('hidden lines', () => {
  // The viewer stands towards +y. The scale is 1: a box 100 wide fills the room.
  const large = box('large', [-50, -10, 0], [50, 0, 100])

  it('a box seen face on is its outline, all the way round', () => {
    const view = viewOf([large], { camera: FRONT, fit: FIT })
    expect(view.scale).toBeCloseTo(1, 9)
    expect(drawn(view, 'large')).toBeCloseTo(400, 0)
    expect(new Set(view.lines.map(({ weight }) => weight))).toEqual(new Set(['outline']))
  })

  it('what stands before it shows whole, what stands behind it not at all', () => {
    const before = box('before', [-20, 5, 40], [20, 10, 60])
    const behind = box('behind', [-20, -30, 40], [20, -20, 60])
    const view = viewOf([large, before, behind], { camera: FRONT, fit: FIT })
    expect(drawn(view, 'before')).toBeCloseTo(120, 0)
    expect(drawn(view, 'behind')).toBe(0)
    expect(drawn(view, 'large')).toBeCloseTo(400, 0)
  })

  it('what is half hidden is cut off where it goes under', () => {
    // 30 mm of 40 stand out to the left of the large box, from the front on the right hand: −x is to the right.
    const half = box('half', [40, -30, 40], [80, -20, 60])
    const view = viewOf([large, half], { camera: FRONT, fit: { width: 130, height: 100 } })
    const shown = drawn(view, 'half') / view.scale
    // Two edges of 30 mm, one of 20 mm.
    expect(Math.abs(shown - 80)).toBeLessThan(0.5)
    const ends = view.lines.filter(({ part }) => part === 'half').flatMap(({ points }) => points)
    const border = view.at([50, 0, 0]).x
    expect(Math.max(...ends.map(({ x }) => x))).toBeLessThan(border + 0.1)
    expect(Math.max(...ends.map(({ x }) => x))).toBeGreaterThan(border - 0.1)
  })

  it('tin a fifth of a millimetre before another hides its edges', () => {
    const sheet = box('sheet', [-20, 0.2, 40], [20, 0.4, 60])
    const under = box('under', [-10, -0.1, 45], [10, 0.001, 55])
    const view = viewOf([large, sheet, under], { camera: { bearing: 25, elevation: 20 }, fit: FIT })
    expect(drawn(view, 'under')).toBe(0)
    expect(drawn(view, 'sheet')).toBeGreaterThan(100)
  })

  it('bearings of the camera run clockwise: from the left hand side of the front, +x comes nearer', () => {
    const mark = box('mark', [50, -6, 40], [51, -4, 60])
    const from = (bearing: number): number =>
      drawn(viewOf([large, mark], { camera: { bearing, elevation: 0 }, fit: FIT }), 'mark')
    expect(from(60)).toBeGreaterThan(10)
    expect(from(300)).toBe(0)
  })
})

const areaOf = (rings: readonly (readonly Point[])[]): number =>
  Math.abs(
    rings.reduce(
      (sum, ring) =>
        sum +
        ring.reduce((twice, { x, y }, index) => {
          const next = ring[(index + 1) % ring.length] as Point
          return twice + (x * next.y - next.x * y) / 2
        }, 0),
      0,
    ),
  )

describe('shades', () => {
  it('cover just what is seen', () => {
    const frame = box('frame', [-50, 0, 0], [50, 10, 100])
    const near = box('near', [-20, 15, 40], [20, 20, 60])
    const view = viewOf([frame, near], { camera: FRONT, fit: FIT })
    const of = (part: string): number =>
      view.fills.filter((fill) => fill.part === part).reduce((sum, { rings }) => sum + areaOf(rings), 0)
    // To half a dot of shade, 0.07 mm, all along the borders.
    expect(Math.abs(of('near') - 800)).toBeLessThan(0.07 * 120)
    expect(Math.abs(of('frame') - 9200)).toBeLessThan(0.07 * 520)
  })

  it('are lighter on top than on the side away from the light', () => {
    const cube = box('cube', [0, 0, 0], [10, 10, 10])
    const view = viewOf([cube], { camera: { bearing: 45, elevation: 30 }, fit: FIT })
    const tones = view.fills.map(({ tone }) => tone)
    expect(new Set(tones).size).toBe(3)
  })
})

describe.each(examples.map((stove) => [stove.name, stove] as const))('%s', (_, stove) => {
  const solids = stoveSolids(kernel, stove)
  const views = (['whole', 'cut', 'exploded', 'packed'] as const).map((which) => {
    const meshes = arranged(kernel, stove, solids, which)
    const options = { fit: { width: 110, height: 160 }, ...(which === 'cut' ? { cutAway: 0 } : {}) }
    return { which, meshes, options, view: viewOf(meshes, options) }
  })

  it.each(views)('$which: fits its room, and is the same each time', ({ meshes, options, view }) => {
    expect(view.width).toBeLessThanOrEqual(110 + 1e-9)
    expect(view.height).toBeLessThanOrEqual(160 + 1e-9)
    for (const { points } of view.lines)
      for (const { x, y } of points) {
        expect(x).toBeGreaterThan(-0.01)
        expect(y).toBeGreaterThan(-0.01)
        expect(x).toBeLessThan(view.width + 0.01)
        expect(y).toBeLessThan(view.height + 0.01)
      }
    const svg = viewSvg(view, stove.name)
    expect(svg).toBe(viewSvg(viewOf(meshes, options), stove.name))
    expect(svg).not.toMatch(/NaN|Infinity|undefined/)
    expect(svg.length).toBeLessThan(200_000)
  })

  it('cut: what was cut is drawn as cut, and only there', () => {
    for (const { which, view } of views) {
      const cut = view.lines.filter(({ weight }) => weight === 'cut').length
      expect([which, cut > 0]).toEqual([which, which === 'cut'])
    }
  })

  it('exploded: no part is hidden', () => {
    const { view, meshes } = views.find(({ which }) => which === 'exploded')!
    for (const { name } of meshes) expect([name, drawn(view, name) > 20]).toEqual([name, true])
  })
})

it('a mesh moved sideways along the line of sight is the same picture', () => {
  const mesh = stoveSolids(kernel, examples[0]!)[0]!.mesh
  const from = (moved: Mesh): number => drawn(viewOf([moved], { camera: FRONT, fit: FIT }), mesh.name)
  expect(from(posed(mesh, { y: 40 }))).toBeCloseTo(from(mesh), 1)
})

it('writes SVG that the house can read back, and set in a PDF', () => {
  const view = viewOf([stoveSolids(kernel, examples[0]!)[0]!.mesh], { fit: FIT })
  const root = readSvg(viewSvg(view, 'Shell & “lid” <1>'))
  const visit = (node: SvgNode): readonly SvgNode[] => [
    node,
    ...node.children.flatMap((child) => (typeof child === 'string' ? [] : visit(child))),
  ]
  const paths = visit(root).filter(({ name }) => name === 'path')
  const [, , wide = 0, high = 0] = (root.attributes.get('viewBox') ?? '').split(' ').map(Number)
  const ends = paths.flatMap(({ attributes }) => readPathData(attributes.get('d') ?? ''))
  expect(ends.length).toBeGreaterThan(500)
  for (const [letter, x = 1, y = 1] of ends) {
    expect('MLZ').toContain(letter)
    expect(x > 0 && y > 0 && x < wide && y < high).toBe(true)
  }
  expect(root.children[0]).toMatchObject({ name: 'title', children: ['Shell & “lid” <1>'] })
  expect(drawSvg(root, {} as never).length).toBeGreaterThan(500)
})

it('refuses to draw nothing', () => {
  expect(() => viewOf([], { fit: FIT })).toThrow(RangeError)
})
