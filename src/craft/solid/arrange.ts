import type { Stove } from '#stove/model.ts'
import { type AxisCut, cutOpen } from './cutOpen.ts'
import { exploded } from './exploded.ts'
import { DEFAULT_FACETS, type FacetOptions } from './facets.ts'
import type { SolidKernel } from './kernel.ts'
import { boundsOf, type Mesh, posed } from './mesh.ts'
import { packed } from './packed.ts'
import { type PartSolid, partSolid } from './part.ts'
import { type Standing, standing } from './poses.ts'

/**
 * - `whole`: as it stands.
 * - `cut`: a half of that, cut by a plane through the axis.
 * - `exploded`: taken apart along the axis.
 * - `packed`: as small as it goes.
 * - `parts`: side by side, each as it stands.
 */
export type Arrangement = 'whole' | 'cut' | 'exploded' | 'packed' | 'parts'

export const ARRANGEMENTS: readonly Arrangement[] = ['whole', 'cut', 'exploded', 'packed', 'parts']

export interface ArrangeOptions {
  readonly facets?: FacetOptions
  readonly cut?: AxisCut
}

/** The front half is taken away, so that one who stands in front looks in. */
const FROM_THE_FRONT: AxisCut = { bearing: 0 }

/** Air between parts that lie side by side [mm]. */
const BESIDE = 8

const meshesOf = (parts: readonly Standing[]): readonly Mesh[] =>
  parts.map(({ solid, pose }) => posed(solid.mesh, pose))

const sideBySide = (solids: readonly PartSolid[]): readonly Mesh[] => {
  let x = 0
  return solids.map(({ mesh }) => {
    const { min, max } = boundsOf([mesh])
    const moved = posed(mesh, { x: x - min[0], y: -(min[1] + max[1]) / 2, z: -min[2] })
    x += max[0] - min[0] + BESIDE
    return moved
  })
}

/**
 * The solids of a stove arranged, each named by its part [mm]. Throws `BadInput` for a stove of more parts than can be
 * packed, when `packed` is asked for.
 */
export const arranged = (
  kernel: SolidKernel,
  stove: Stove,
  solids: readonly PartSolid[],
  arrangement: Arrangement,
  { facets = DEFAULT_FACETS, cut = FROM_THE_FRONT }: ArrangeOptions = {},
): readonly Mesh[] => {
  switch (arrangement) {
    case 'whole':
      return meshesOf(standing(stove, solids))
    case 'cut':
      return cutOpen(kernel, meshesOf(standing(stove, solids)), cut)
    case 'exploded':
      return meshesOf(exploded(standing(stove, solids)))
    case 'parts':
      return sideBySide(solids)
    case 'packed': {
      const rolled = (name: string, radius: number): PartSolid => {
        const { part, facetsRound } = solids.find((one) => one.name === name) as PartSolid
        return partSolid(kernel, name, part, { facets, facetsRound, bandRadius: radius })
      }
      return meshesOf(packed(stove, solids, rolled))
    }
  }
}
