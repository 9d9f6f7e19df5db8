import { toMillimetres } from '#basis/units.ts'
import type { Part, Stove } from '#stove/model.ts'
import { DEFAULT_FACETS, type FacetOptions, facetsRound } from './facets.ts'
import type { SolidKernel } from './kernel.ts'
import { type PartSolid, partRings, partSolid } from './part.ts'

/** Inside radius of a band: that of the can it goes round; of one that nobody placed, of the widest [mm]. */
export const bandRadius = (stove: Stove, name: string): number => {
  const host = stove.assembly.find(({ part }) => part === name)?.host ?? null
  const worn = host === null ? undefined : stove.parts.get(host)
  if (worn?.form === 'can') return toMillimetres(worn.can.bodyDiameter.value) / 2
  const bodies = [...stove.parts.values()].flatMap((part) =>
    part.form === 'can' ? [toMillimetres(part.can.bodyDiameter.value) / 2] : [],
  )
  return Math.max(1, ...bodies)
}

const widest = (stove: Stove, name: string, part: Part): number =>
  Math.max(...partRings(part, bandRadius(stove, name)).map(({ outer }) => outer))

/**
 * Every part of a stove as a closed solid with its holes and vanes, in the order of the file [mm]. All parts have
 * the same number of facets round the axis, enough for the widest.
 */
export const stoveSolids = (
  kernel: SolidKernel,
  stove: Stove,
  facets: FacetOptions = DEFAULT_FACETS,
): readonly PartSolid[] => {
  const parts = [...stove.parts]
  const round = facetsRound(Math.max(...parts.map(([name, part]) => widest(stove, name, part))), facets)
  return parts.map(([name, part]) =>
    partSolid(kernel, name, part, { facets, facetsRound: round, bandRadius: bandRadius(stove, name) }),
  )
}
