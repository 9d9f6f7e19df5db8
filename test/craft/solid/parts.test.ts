import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { fromMillimetres } from '#basis/units.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import { writeStl } from '#craft/mesh/stl.ts'
import { type FacetOptions, facetsRound } from '#craft/solid/facets.ts'
import { type Mesh, meshVolume } from '#craft/solid/mesh.ts'
import type { PartSolid } from '#craft/solid/part.ts'
import { bandRadius, stoveSolids } from '#craft/solid/solids.ts'
import { STEEL_DENSITY } from '#stove/can/mass.ts'
import { bandLength, partMass } from '#stove/fit/partMass.ts'
import type { CanEnd, Stove } from '#stove/model.ts'
import { needs } from '../../outsideProgram.ts'
import { anyStove } from '../randomStoves.ts'
import { bareShell, can, canPart, place, round, row, stove, testStoves } from '../stoves.ts'
import { admesh } from './admesh.ts'
import { openEdges, pieces } from './closed.ts'
import { example, examples } from './stoves.ts'

const kernel = await solidKernel()
const FINE: FacetOptions = { chord: 0.02 }

const sound = [...examples, ...testStoves.map((make) => make())]
/** A hundred stoves that need not be wise: rows overlap, run over edges and cut cans in two. */
const wildStoves = fc.sample(anyStove, { numRuns: 100, seed: 20260531 })

const solidsOf = (stoves: readonly Stove[], facets = FINE): readonly PartSolid[] =>
  stoves.flatMap((one) => stoveSolids(kernel, one, facets))

/** Made once, for all that is asked of them. */
let wild: readonly PartSolid[] = []
beforeAll(() => {
  wild = solidsOf(wildStoves, { chord: 0.05 })
})

describe('every part of a stove is a closed solid', () => {
  it.each(sound.map((one) => [one.name, one] as const))('%s: every edge met once each way', (_, one) => {
    for (const { mesh, name } of stoveSolids(kernel, one, FINE))
      expect([name, openEdges(mesh)]).toEqual([name, 0])
  })

  it('of 100 stoves drilled anyhow too', () => {
    for (const { mesh } of wild) expect(openEdges(mesh)).toBe(0)
  })

  it('admesh finds one part each and nothing to mend', (context) => {
    needs(context, 'admesh')
    for (const { mesh, name } of solidsOf(sound)) {
      const { volume, ...said } = admesh(writeStl([mesh], 'Tinwright'))
      expect([name, said]).toEqual([name, { parts: 1, disconnected: 0, repairs: 0 }])
      expect(Math.abs(volume / meshVolume(mesh) - 1)).toBeLessThan(1e-4)
    }
  })

  it('admesh finds nothing to mend in 100 stoves drilled anyhow', (context) => {
    needs(context, 'admesh')
    for (const { mesh, name } of wild) {
      const { volume, ...said } = admesh(writeStl([mesh], 'Tinwright'))
      expect([name, said]).toEqual([name, { parts: pieces(mesh), disconnected: 0, repairs: 0 }])
      expect(volume).toBeGreaterThan(0)
    }
  })
})

describe('volume', () => {
  it.each([0.1, 0.05, 0.02, 0.005])(
    'lies within the stated error of the true curves, chord %s mm',
    (chord) => {
      for (const { mesh, name, volume, volumeError } of solidsOf(sound, { chord }))
        expect([name, Math.abs(meshVolume(mesh) - volume) <= volumeError]).toEqual([name, true])
    },
  )

  it('of 100 stoves drilled anyhow too', () => {
    for (const { mesh, name, volume, volumeError } of wild)
      expect([name, Math.abs(meshVolume(mesh) - volume) <= volumeError]).toEqual([name, true])
  })

  it('is held to something: the stated error is below a hundredth, and shrinks with the chord', () => {
    const coarse = solidsOf(examples, { chord: 0.05 })
    const fine = solidsOf(examples, { chord: 0.005 })
    for (const [index, { volume, volumeError }] of coarse.entries()) {
      expect(volumeError / volume).toBeLessThan(0.012)
      expect(fine[index]!.volumeError).toBeLessThan(volumeError)
    }
  })

  it('without a seam agrees with the weight of the tin, which counts the same openings by area', () => {
    const bare: CanEnd = { kind: 'cut' }
    const holes = { row: row(round(8), 12, 40), more: row(round(5), 20, 70) }
    const plain = stove(
      'Bare wall',
      { wall: canPart('fuel can', can(90, 100, { bottom: { kind: 'drawn' }, top: bare }), holes) },
      [place('wall', 'on ground', null)],
    )
    const unseamed = [...examples, plain].flatMap((one) =>
      stoveSolids(kernel, one, FINE)
        .filter(({ part }) => part.form !== 'can' || part.can.top.kind === 'cut')
        .filter(({ part }) => part.form !== 'can' || part.can.bottom.kind === 'drawn')
        .map((solid) => ({ solid, one })),
    )
    expect(unseamed.length).toBeGreaterThan(5)
    for (const { solid, one } of unseamed) {
      const { part, name, volume } = solid
      const length =
        part.form === 'band'
          ? bandLength(fromMillimetres(2 * bandRadius(one, name)), part.thickness)
          : fromMillimetres(0)
      const tin = (partMass(part, length) / STEEL_DENSITY) * 1e9
      // The weight takes holes flat and the corner of a drawn can twice; bends of vanes and kerfs are not in it.
      expect([name, Math.abs(volume / tin - 1) < 0.008]).toEqual([name, true])
    }
  })
})

const cornersOf = ({ positions }: Mesh): readonly (readonly [number, number, number])[] =>
  Array.from({ length: positions.length / 3 }, (_, corner) => [
    positions[3 * corner]!,
    positions[3 * corner + 1]!,
    positions[3 * corner + 2]!,
  ])

describe('facets', () => {
  it.each([
    [50, 0.05],
    [50, 0.001],
    [4, 0.02],
    [150, 0.1],
  ])('of a circle of %s mm lie within %s mm of it', (radius, chord) => {
    const facets = facetsRound(radius, { chord })
    expect(radius * (1 - Math.cos(Math.PI / facets))).toBeLessThanOrEqual(chord)
    expect(facets % 4).toBe(0)
  })

  it('have their corners on the true surface', () => {
    const [shell] = stoveSolids(
      kernel,
      bareShell(100, {}, { top: { kind: 'cut' }, bottom: { kind: 'cut' } }),
      FINE,
    )
    const radii = cornersOf(shell!.mesh).map(([x, y]) => Math.hypot(x, y))
    for (const radius of radii)
      expect(Math.min(Math.abs(radius - 50), Math.abs(radius - 49.8))).toBeLessThan(1e-4)
  })
})

describe('openings are where the stove says', () => {
  it('a round hole has its corners on a cylinder of its diameter about its axis', () => {
    const bearing = 37
    const one = bareShell(100, { hole: row(round(12), 1, 60, { bearing: bearing as never }) })
    const { mesh } = stoveSolids(kernel, one, FINE)[0]!
    const angle = (bearing * Math.PI) / 180
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
    const rim = cornersOf(mesh).filter(
      ([x, y, z]) => x * sin + y * cos > 0 && Math.hypot(x * cos - y * sin, z - 60) < 6.5,
    )
    expect(rim.length).toBeGreaterThan(40)
    for (const [x, y, z] of rim) {
      const off = Math.hypot(x * cos - y * sin, z - 60)
      // Corners of the hole's own polygon lie on the circle, those where it crosses the wall's edges within its chord.
      expect(off).toBeLessThan(6 + 1e-3)
      expect(off).toBeGreaterThan(6 - 0.021)
    }
  })

  it('a position that is left out stays closed', () => {
    const all = stoveSolids(kernel, bareShell(100, { ring: row(round(8), 6, 60) }), FINE)[0]!
    const one = bareShell(100, { ring: row(round(8), 6, 60, { leftOut: [3] }) })
    const less = stoveSolids(kernel, one, FINE)[0]!
    const hole = Math.PI * 16 * 0.2
    expect(less.volume - all.volume).toBeGreaterThan(hole)
    expect(less.volume - all.volume).toBeLessThan(1.01 * hole)
  })

  it('bearings run clockwise seen from above, the front towards +y', () => {
    const one = bareShell(100, { ring: row(round(8), 1, 60, { bearing: 90 as never }) })
    const { mesh } = stoveSolids(kernel, one, FINE)[0]!
    const rim = cornersOf(mesh).filter(([, y, z]) => Math.hypot(y, z - 60) < 4.1)
    expect(rim.length).toBeGreaterThan(0)
    expect(rim.every(([x]) => x > 45)).toBe(true)
  })
})

describe('vanes', () => {
  it('bent up stand as high as their width and angle say, their slit open', () => {
    const { mesh, part } = stoveSolids(kernel, example('Redshank'), FINE).find(
      ({ name }) => name === 'concentrator',
    )!
    if (part.form !== 'disc') throw new Error('the concentrator is a disc')
    // 8 mm wide less the kerf of 0.1 mm, bent by 30°, of 0.25 mm tin turned about its lower edge.
    const top = 7.9 * Math.sin(Math.PI / 6) + 0.25 * Math.cos(Math.PI / 6)
    expect(Math.max(...cornersOf(mesh).map(([, , z]) => z))).toBeCloseTo(top, 3)
    // Eight slits and the bore go right through: a disc with nine holes has genus 9 where tongues close none.
    const edges = mesh.triangles.length / 2
    const euler = mesh.positions.length / 3 - edges + mesh.triangles.length / 3
    expect((2 - euler) / 2).toBe(9)
  })

  it('that are not bent leave the disc whole', () => {
    const flat = structuredClone([...example('Redshank').parts.get('concentrator')!.openings])
    const openings = new Map(
      flat.map(([name, opening]) => [
        name,
        opening.kind === 'vanes' ? { ...opening, angle: 0 as never } : opening,
      ]),
    )
    const disc = example('Redshank').parts.get('concentrator')!
    const one = stove('Flat', { disc: { ...disc, openings } as never }, [place('disc', 'on ground', null)])
    const { mesh } = stoveSolids(kernel, one, FINE)[0]!
    expect(Math.max(...cornersOf(mesh).map(([, , z]) => z))).toBeCloseTo(0.25, 6)
  })
})

it('the same stove gives the same bytes', () => {
  const bytes = () =>
    writeStl(
      solidsOf(examples).map(({ mesh }) => mesh),
      'Tinwright',
    )
  expect(Buffer.compare(bytes(), bytes())).toBe(0)
})
