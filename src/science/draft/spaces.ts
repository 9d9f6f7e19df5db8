import type { PlacedPart } from '#stove/assembly/place.ts'
import type { Chamber } from './chambers.ts'

/** What a maker would call a space. */
export const chamberName = (chamber: Chamber, fuelCan: PlacedPart): string => {
  if (chamber.innerRadius > 0) return `gap in ${chamber.within}`
  const middle = (chamber.bottom + chamber.top) / 2
  if (middle > fuelCan.top) return `space in ${chamber.within}`
  return middle < fuelCan.base || chamber.within !== fuelCan.name || chamber.top < fuelCan.top - 1e-3
    ? `space under the fuel in ${chamber.within}`
    : `flame space in ${chamber.within}`
}

/** Flow area; the open air is endless [m²]. */
export const chamberArea = (chamber: Chamber | null): number =>
  chamber === null
    ? Number.POSITIVE_INFINITY
    : Math.PI * (chamber.outerRadius ** 2 - chamber.innerRadius ** 2)
