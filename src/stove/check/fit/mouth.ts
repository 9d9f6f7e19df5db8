import type { Metres } from '#basis/units.ts'
import { bottomOpening, outsideAt, topOpening, type WhichEnd, widestOutside } from '#stove/can/ends.ts'
import { narrowestInside } from '#stove/can/taper.ts'
import type { Face, Measured, Opening, Part } from '#stove/model.ts'

const exactly = (value: number): Measured => ({ value: value as Metres, tolerance: 0 as Metres })

/** The widest bore cut in a face; null for none [m]. */
const boreIn = (openings: ReadonlyMap<string, Opening>, face: Face): Measured | null => {
  let widest: number | null = null
  for (const opening of openings.values())
    if (opening.kind === 'bore' && opening.face === face) widest = Math.max(widest ?? 0, opening.diameter)
  return widest === null ? null : exactly(widest)
}

/** Clear diameter through one end of a part, bores counted; null where that end is closed [m]. */
export const mouthAt = (part: Part, end: WhichEnd): Measured | null => {
  switch (part.form) {
    case 'can': {
      const opening = end === 'top' ? topOpening(part.can) : bottomOpening(part.can)
      return opening ?? boreIn(part.openings, end)
    }
    case 'disc':
      return boreIn(part.openings, 'face')
    case 'band':
      return null
  }
}

/** Outside diameter at one end of a can, or of a disc [m]. Bands have none of their own. */
export const outerAt = (part: Part, end: WhichEnd): Measured | null =>
  part.form === 'can' ? outsideAt(part.can, end) : part.form === 'disc' ? part.diameter : null

/** The widest a part is anywhere [m]. */
export const widestOf = (part: Part): Measured | null =>
  part.form === 'can' ? widestOutside(part.can) : part.form === 'disc' ? part.diameter : null

/** Inside diameter of a can's wall where it is narrowest; null for other parts [m]. */
export const insideOf = (part: Part): Measured | null =>
  part.form === 'can' ? narrowestInside(part.can) : null

/** Play on the diameter of something wide `width` in an opening, as measured and with both at their worst [m]. */
export interface Play {
  readonly nominal: number
  readonly worst: number
}

export const playIn = (width: Measured, opening: Measured): Play => {
  const nominal = opening.value - width.value
  return { nominal, worst: nominal - opening.tolerance - width.tolerance }
}

/** Ledge all round of something wide `width` over an opening, as measured and with both at their worst [m]. */
export const ledgeOn = (width: Measured, opening: Measured): Play => {
  const nominal = (width.value - opening.value) / 2
  return { nominal, worst: nominal - (opening.tolerance + width.tolerance) / 2 }
}
