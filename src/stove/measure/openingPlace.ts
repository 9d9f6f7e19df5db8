import type { Metres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { Opening } from '#stove/model.ts'
import { wallHoleSize } from '#stove/opening/row.ts'

/** Where an opening lies along the stove's axis, above the ground. */
export interface OpeningPlace {
  readonly part: PlacedPart
  readonly name: string
  readonly opening: Opening
  readonly bottom: Metres
  readonly top: Metres
}

const faceHeight = ({ part, base, top }: PlacedPart, face: 'bottom' | 'top' | 'face'): number => {
  if (part.form !== 'can' || face === 'face') return base
  const end = part.can[face]
  const sunk = end.kind === 'plain' ? end.countersink : 0
  return face === 'bottom' ? base + sunk : top - sunk
}

/** Heights of an opening's lowest and highest edge; of one in a flat face, of that face [m]. */
export const placeOpening = (part: PlacedPart, name: string, opening: Opening): OpeningPlace => {
  if (opening.kind !== 'row') {
    const height = faceHeight(part, opening.face) as Metres
    return { part, name, opening, bottom: height, top: height }
  }
  const half = wallHoleSize(opening.hole).axial / 2
  const middle = part.base + opening.height
  return { part, name, opening, bottom: (middle - half) as Metres, top: (middle + half) as Metres }
}

/** Every opening of every part that is not a damper, in assembly order. */
export const placedOpenings = (placed: readonly PlacedPart[]): readonly OpeningPlace[] =>
  placed
    .filter(({ part }) => part.form !== 'band')
    .flatMap((part) => [...part.part.openings].map(([name, opening]) => placeOpening(part, name, opening)))
