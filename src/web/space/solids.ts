import { orThrow } from '#basis/problem.ts'
import { toMillimetres } from '#basis/units.ts'
import { arranged } from '#craft/solid/arrange.ts'
import { cutOpen } from '#craft/solid/cutOpen.ts'
import { exploded } from '#craft/solid/exploded.ts'
import { type SolidKernel, withSolids } from '#craft/solid/kernel.ts'
import { boundsOf, type Mesh } from '#craft/solid/mesh.ts'
import { meshFrom } from '#craft/solid/meshFrom.ts'
import { packed } from '#craft/solid/packed.ts'
import { type PartSolid, partSolid } from '#craft/solid/part.ts'
import { type Standing, standing } from '#craft/solid/poses.ts'
import { bandRadius, stoveSolids } from '#craft/solid/solids.ts'
import { EXPLODED_CAMERA, PLAN_CAMERA } from '#craft/view/camera.ts'
import { DARK_THEME, PAPER_THEME, viewSvg } from '#craft/view/svg.ts'
import { viewOf } from '#craft/view/view.ts'
import { placeParts } from '#stove/assembly/place.ts'
import { fuelBedOf } from '#stove/measure/fuelBed.ts'
import type { Stove } from '#stove/model.ts'
import type { SpaceWish } from '../plan/worker/job.ts'
import { outlinesOf } from './outlines.ts'
import type { OpeningOutline, SpaceScene, Stuff } from './scene.ts'
import { shaded } from './shading.ts'

/** Facets of what is looked at on a screen [mm]. */
const SCREEN_FACETS = { chord: 0.06 }

/** Pieces of fuel leave this much air beside the wall [mm]. */
const BESIDE_FUEL = 1.5

/** The fuel as one block, where it lies; null where nothing carries any. */
const fuelMesh = (kernel: SolidKernel, stove: Stove, lift: (part: string) => number): Mesh | null => {
  const placed = placeParts(stove)
  const bed = placed.ok ? fuelBedOf(stove, placed.value) : null
  if (bed === null) return null
  const radius = Math.sqrt(bed.section / Math.PI) * 1000 - BESIDE_FUEL
  const height = toMillimetres(stove.fuel.level)
  if (!(radius > 0 && height > 0)) return null
  return withSolids((own) => {
    const block = own(kernel.Manifold.cylinder(height, radius, radius, 96))
    // The tin of the floor has a thickness of its own.
    const floor = toMillimetres(bed.floor) + lift(bed.carrier.name) + 0.4
    return meshFrom('fuel', own(block.translate([0, 0, floor])))
  })
}

const sootyRoles = new Set(['fuel can', 'concentrator', 'riser', 'grate'])

const stuffOf = ({ parts }: Stove, name: string): Stuff => {
  const part = parts.get(name)
  if (part === undefined) return 'fuel'
  return sootyRoles.has(part.role) ? 'sooty tin' : 'tin'
}

/** What lies in front of the cut is gone with the half. */
const behindCut = ({ part, opening, lines }: OpeningOutline): OpeningOutline => {
  const kept: number[] = []
  for (let at = 0; at < lines.length; at += 6)
    if (lines[at + 1]! + lines[at + 4]! <= 0) kept.push(...lines.subarray(at, at + 6))
  return { part, opening, lines: Float32Array.from(kept) }
}

const measuresOf = (meshes: readonly Mesh[]): Omit<SpaceScene, 'bodies' | 'outlines'> => {
  const { min, max } = boundsOf(meshes)
  const middle = (min[2] + max[2]) / 2
  let radius = 1
  let across = 1
  for (const { positions } of meshes)
    for (let at = 0; at < positions.length; at += 3) {
      const out = Math.hypot(positions[at]!, positions[at + 1]!)
      radius = Math.max(radius, Math.hypot(out, positions[at + 2]! - middle))
      across = Math.max(across, out)
    }
  return { middle, radius, height: max[2] - min[2], width: 2 * across }
}

interface Known {
  readonly stove: string
  readonly solids: readonly PartSolid[]
}

/** The last stove's solids: whoever looks at a stove looks at it from several sides. */
let known: Known | null = null

const nameOf = (stove: Stove): string =>
  JSON.stringify([
    [...stove.parts].map(([name, part]) => [name, { ...part, openings: [...part.openings] }]),
    stove.assembly,
  ])

const solidsOf = (kernel: SolidKernel, stove: Stove): readonly PartSolid[] => {
  const name = nameOf(stove)
  if (known?.stove !== name) known = { stove: name, solids: stoveSolids(kernel, stove, SCREEN_FACETS) }
  return known.solids
}

const placedIn = (
  kernel: SolidKernel,
  stove: Stove,
  solids: readonly PartSolid[],
  arrangement: SpaceWish['arrangement'],
): readonly Standing[] => {
  switch (arrangement) {
    case 'whole':
    case 'cut':
      return standing(stove, solids)
    case 'exploded':
      return exploded(standing(stove, solids))
    case 'packed':
      return packed(stove, solids, (name, radius) => {
        const { part, facetsRound } = solids.find((one) => one.name === name) as PartSolid
        return partSolid(kernel, name, part, { facets: SCREEN_FACETS, facetsRound, bandRadius: radius })
      })
  }
}

/** A stove in space, as the page shows it: the same solids as are written to files. */
export const spaceScene = (kernel: SolidKernel, { stove, arrangement }: SpaceWish): SpaceScene => {
  orThrow(placeParts(stove))
  const solids = solidsOf(kernel, stove)
  const there = placedIn(kernel, stove, solids, arrangement)
  const tin: readonly Mesh[] = arranged(kernel, stove, solids, arrangement, { facets: SCREEN_FACETS })
  const lift = (part: string): number => there.find(({ solid }) => solid.name === part)?.lift ?? 0
  const fuel = arrangement === 'whole' || arrangement === 'cut' ? fuelMesh(kernel, stove, lift) : null
  const filled = fuel === null ? [] : arrangement === 'cut' ? cutOpen(kernel, [fuel], { bearing: 0 }) : [fuel]
  const meshes = [...tin, ...filled]
  const outlines = there.flatMap(({ solid: { name }, pose }) =>
    outlinesOf(stove, name, pose, bandRadius(stove, name)),
  )
  return {
    bodies: meshes.map((mesh) => shaded(mesh, stuffOf(stove, mesh.name))),
    outlines: arrangement === 'cut' ? outlines.map(behindCut) : outlines,
    ...measuresOf(meshes),
  }
}

/** Room of the drawing [mm]. */
const DRAWN = { width: 120, height: 150 }

/** The same stove drawn, for a device that shows nothing in space. */
export const drawnView = (
  kernel: SolidKernel,
  { stove, arrangement, dark }: SpaceWish & { readonly dark: boolean },
): string => {
  const meshes = arranged(kernel, stove, solidsOf(kernel, stove), arrangement, { facets: SCREEN_FACETS })
  const view = viewOf(meshes, {
    camera: arrangement === 'exploded' ? EXPLODED_CAMERA : PLAN_CAMERA,
    fit: DRAWN,
    ...(arrangement === 'cut' ? { cutAway: 0 } : {}),
  })
  return viewSvg(view, `${stove.name}, ${arrangement}`, dark ? DARK_THEME : PAPER_THEME)
}
