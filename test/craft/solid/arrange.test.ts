import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { solidKernel } from '#cli/solidKernel.ts'
import { ARRANGEMENTS, type Arrangement, arranged } from '#craft/solid/arrange.ts'
import { withSolids } from '#craft/solid/kernel.ts'
import { boundsOf, type Mesh, meshVolume } from '#craft/solid/mesh.ts'
import { standing } from '#craft/solid/poses.ts'
import { stoveSolids } from '#craft/solid/solids.ts'
import { viewSvg } from '#craft/view/svg.ts'
import { viewOf } from '#craft/view/view.ts'
import { smallestBundle } from '#stove/fit/packing.ts'
import type { Stove } from '#stove/model.ts'
import { anyStove } from '../randomStoves.ts'
import { testStoves } from '../stoves.ts'
import { openEdges } from './closed.ts'
import { example, examples } from './stoves.ts'

const kernel = await solidKernel()
const made = new Map<string, readonly Mesh[]>()

const meshes = (stove: Stove, arrangement: Arrangement): readonly Mesh[] => {
  const key = `${stove.name} ${arrangement}`
  const found = made.get(key) ?? arranged(kernel, stove, stoveSolids(kernel, stove), arrangement)
  made.set(key, found)
  return found
}

/** Volume that two meshes share [mm³]. */
const shared = (a: Mesh, b: Mesh): number =>
  withSolids((own) => {
    const solid = ({ positions, triangles }: Mesh) =>
      own(
        new kernel.Manifold(new kernel.Mesh({ numProp: 3, vertProperties: positions, triVerts: triangles })),
      )
    return own(solid(a).intersect(solid(b))).volume()
  })

const collisions = (list: readonly Mesh[]): readonly string[] =>
  list.flatMap((a, index) =>
    list.slice(index + 1).flatMap((b) => {
      const volume = shared(a, b)
      return volume > 0.05 ? [`${a.name} and ${b.name}: ${volume.toFixed(2)} mm³`] : []
    }),
  )

const named = (list: readonly Stove[]) => list.map((stove) => [stove.name, stove] as const)
const all = named([...examples, ...testStoves.map((make) => make())])

describe.each(named(examples))('%s', (_, stove) => {
  it.each(['whole', 'exploded', 'packed', 'parts'] as const)('%s: no tin runs through other tin', (which) => {
    expect(collisions(meshes(stove, which))).toEqual([])
  })
})

describe.each(all)('%s', (_, stove) => {
  it.each(['whole', 'cut', 'exploded', 'packed', 'parts'] as const)('%s: every mesh is closed', (which) => {
    const list = meshes(stove, which)
    expect(list.map(openEdges)).toEqual(list.map(() => 0))
    const names = list.map(({ name }) => name)
    expect(names.toSorted()).toEqual([...stove.parts.keys()].toSorted())
  })

  it('exploded: every part has a stretch of the axis to itself, in the order of taking apart', () => {
    const spans = meshes(stove, 'exploded').map((mesh) => {
      const { min, max } = boundsOf([mesh])
      return { name: mesh.name, from: min[2], to: max[2] }
    })
    const sorted = spans.toSorted((a, b) => a.from - b.from)
    for (const [index, { to }] of sorted.entries())
      expect(sorted[index + 1]?.from ?? Infinity).toBeGreaterThan(to)
    // What sits on something, or hangs or stands in it, comes off upwards before it.
    for (const { part, host, place } of stove.assembly) {
      if (host === null || (place !== 'sits on' && place !== 'hangs in' && place !== 'stands in')) continue
      const [at, under] = [part, host].map((name) => spans.find((span) => span.name === name)!.from)
      expect([part, host, at! > under!]).toEqual([part, host, true])
    }
  })

  it('cut: the two halves of a cut are the whole', () => {
    const solids = stoveSolids(kernel, stove)
    const volume = (list: readonly Mesh[]): number => list.reduce((sum, mesh) => sum + meshVolume(mesh), 0)
    const half = (bearing: number): number =>
      volume(arranged(kernel, stove, solids, 'cut', { cut: { bearing } }))
    const whole = volume(meshes(stove, 'whole'))
    expect((half(30) + half(210)) / whole).toBeCloseTo(1, 5)
    for (const mesh of arranged(kernel, stove, solids, 'cut', { cut: { bearing: 0 } }))
      expect(boundsOf([mesh]).max[1]).toBeLessThan(1e-4)
  })

  it('packed: no wider and no higher than the bundle says', () => {
    const bundle = smallestBundle(stove.parts, stove.assembly)
    const { min, max } = boundsOf(meshes(stove, 'packed'))
    expect(min[2]).toBeGreaterThan(-1e-3)
    expect(max[2] - min[2]).toBeLessThan(1000 * bundle.height + 0.05)
    expect(max[0] - min[0]).toBeLessThan(1000 * bundle.diameter + 0.05)
    // Not lower either, but for what the cans' tolerance holds apart.
    expect(max[2] - min[2]).toBeGreaterThan(1000 * bundle.height - 5)
  })
})

it('of 15 stoves drilled anyhow: every arrangement closed, and a picture of each', {
  timeout: 600_000,
}, () => {
  for (const stove of fc.sample(anyStove, { numRuns: 15, seed: 99 })) {
    const solids = stoveSolids(kernel, stove)
    for (const which of ARRANGEMENTS) {
      const list = arranged(kernel, stove, solids, which, { cut: { bearing: 37 } })
      expect(list.map(openEdges)).toEqual(list.map(() => 0))
      const svg = viewSvg(viewOf(list, { fit: { width: 100, height: 150 } }), which)
      expect(svg).not.toMatch(/NaN|Infinity/)
      expect(svg.length).toBeLessThan(200_000)
    }
  }
})

describe('standing', () => {
  it('leaves parts where the sums of the stove file put them, or says how far it raised them', () => {
    const lifts = Object.fromEntries(
      examples.map((stove) => [
        stove.name,
        standing(stove, stoveSolids(kernel, stove)).map(({ lift }) => Number(lift.toFixed(3))),
      ]),
    )
    expect(lifts).toEqual({
      Redshank: [0, 0, 0, 0, 0],
      Heron: [0, 0, 0, 0],
      // The fuel can's seam, 3 mm high, lies on the lid ring and not in it.
      Greylag: [0, 0, 3, 3, 3, 3],
    })
  })

  it('turns a damper by its placement: the same solid, its windows moved clockwise', () => {
    const stove = example('Redshank')
    const assembly = stove.assembly.map((one) =>
      one.part === 'damper' ? { ...one, turned: 10 as never } : one,
    )
    const damper = (which: Stove): Mesh =>
      arranged(kernel, which, stoveSolids(kernel, which), 'whole').find(({ name }) => name === 'damper')!
    const [before, after] = [damper(stove), damper({ ...stove, assembly })]
    const [sin, cos] = [Math.sin(Math.PI / 18), Math.cos(Math.PI / 18)]
    for (let at = 0; at < before.positions.length; at += 3) {
      const [x, y] = [before.positions[at]!, before.positions[at + 1]!]
      expect(
        Math.hypot(
          after.positions[at]! - (cos * x + sin * y),
          after.positions[at + 1]! - (cos * y - sin * x),
        ),
      ).toBeLessThan(1e-4)
    }
  })
})
