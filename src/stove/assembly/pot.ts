import type { Metres } from '#basis/units.ts'
import type { Stove } from '#stove/model.ts'
import type { PlacedPart } from './place.ts'

/** Where the pot stands. */
export interface PotPlace {
  readonly diameter: Metres
  /** Of the rim under it above the ground [m]. */
  readonly rim: Metres
  /** Of its bottom above the ground [m]. */
  readonly bottom: Metres
}

/**
 * The pot of a stove that is built for one: on its pot stand; else on the highest can, where that has outlet holes below its rim or
 * the pot stands over it on rods. Null where it would only close the stove: then it is taken to stand somewhere else.
 */
export const potPlace = (stove: Stove, placed: readonly PlacedPart[]): PotPlace | null => {
  const { potDiameter, potGap = 0 } = stove
  if (potDiameter === null) return null
  const cans = placed.filter(({ part }) => part.form === 'can').sort((a, b) => b.top - a.top)
  const stand = cans.find(({ part }) => part.role === 'pot stand')
  const highest = cans[0]
  const letsOut =
    potGap > 0 ||
    [...(highest?.part.openings.values() ?? [])].some(({ kind, duty }) => kind === 'row' && duty === 'outlet')
  const carrier = stand ?? (letsOut ? highest : undefined)
  if (carrier === undefined) return null
  return { diameter: potDiameter, rim: carrier.top, bottom: (carrier.top + potGap) as Metres }
}
