import type { SquareMetres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import { type PotPlace, potPlace } from '#stove/assembly/pot.ts'
import { outsideAt, topOpening } from '#stove/can/ends.ts'
import type { Stove } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'
import type { OpeningPlace } from './openingPlace.ts'

/** A place where flue gas leaves the stove. */
export interface WayOut {
  readonly part: string
  readonly area: SquareMetres
  /** Its middle above the ground [m]. */
  readonly height: number
  /**
   * - `outlet`: openings meant for it;
   * - `under pot`: the ring between the rim and a pot that stands on rods;
   * - `open top`: the rim, no pot on it;
   * - `for want of one`: openings over the fire that were meant to let air in, and are the only way left.
   */
  readonly by: 'outlet' | 'under pot' | 'open top' | 'for want of one'
}

const middleOf = ({ bottom, top }: OpeningPlace): number => (bottom + top) / 2

const byRows = (places: readonly OpeningPlace[], by: WayOut['by']): readonly WayOut[] => {
  const area = places.reduce((sum, { opening }) => sum + openingArea(opening), 0)
  const [first] = places
  if (first === undefined || area <= 0) return []
  const moment = places.reduce((sum, place) => sum + openingArea(place.opening) * middleOf(place), 0)
  return [{ part: first.part.name, area: area as SquareMetres, height: moment / area, by }]
}

/** Clear section of the highest can's open top; a disc that closes the stove lets gas out by its passage. */
const openTop = (placed: readonly PlacedPart[]): readonly WayOut[] => {
  const highest = [...placed]
    .filter(({ part }) => part.form !== 'band')
    .sort((one, other) => other.top - one.top)[0]
  if (highest?.part.form !== 'can') return []
  const { can } = highest.part
  const mouth = topOpening(can)
  if (mouth === null) return []
  const area = ((Math.PI / 4) * mouth.value ** 2) as SquareMetres
  return [{ part: highest.name, area, height: highest.top, by: 'open top' }]
}

const underPot = ({ rim, bottom }: PotPlace, placed: readonly PlacedPart[]): readonly WayOut[] => {
  const carrier = placed.find(({ top, part }) => part.form === 'can' && top === rim)
  if (carrier?.part.form !== 'can' || bottom <= rim) return []
  const ring = Math.PI * outsideAt(carrier.part.can, 'top').value * (bottom - rim)
  return [{ part: carrier.name, area: ring as SquareMetres, height: rim, by: 'under pot' }]
}

/**
 * Where flue gas leaves, dampers aside: the openings called outlet, and the ring under a pot on rods or the open top; only where
 * there is none of these, the tertiary rows. Empty where it cannot leave, or leaves by the passage of a disc on top.
 */
export const waysOut = (
  stove: Stove,
  placed: readonly PlacedPart[],
  places: readonly OpeningPlace[],
): readonly WayOut[] => {
  const pot = potPlace(stove, placed)
  const free = pot === null ? openTop(placed) : underPot(pot, placed)
  const meant = [
    ...byRows(
      places.filter(({ opening }) => opening.duty === 'outlet'),
      'outlet',
    ),
    ...free,
  ]
  if (meant.length > 0 || pot === null) return meant
  return byRows(
    places.filter(({ opening }) => opening.duty === 'tertiary'),
    'for want of one',
  )
}
