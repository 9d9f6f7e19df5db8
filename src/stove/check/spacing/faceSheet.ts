import { insideAtEnd } from '#stove/can/taper.ts'
import type { CanPart, DiscPart, Face } from '#stove/model.ts'

/** The flat tin of one face, from the rim of what is already open to its outer edge [m]. */
export interface FaceSheet {
  readonly inner: number
  readonly outer: number
  readonly thickness: number
  /** What the outer edge is. */
  readonly border: 'edge of the disc' | 'seam' | 'corner of the drawn bottom'
}

/** What is left to cut in a face; null where it has been cut out [m]. */
export const sheetOf = (part: CanPart | DiscPart, face: Face): FaceSheet | null => {
  if (part.form === 'disc')
    return { inner: 0, outer: part.diameter.value / 2, thickness: part.thickness, border: 'edge of the disc' }
  const { can } = part
  if (face === 'face') return null
  const end = can[face]
  const inside = insideAtEnd(can, face).value / 2
  const thickness = can.endWall
  switch (end.kind) {
    case 'plain':
      // The end's own upright wall stands inside the body's.
      return { inner: 0, outer: inside - thickness, thickness, border: 'seam' }
    case 'drawn':
      return { inner: 0, outer: inside, thickness, border: 'corner of the drawn bottom' }
    case 'pull-off':
    case 'friction':
      return { inner: end.opening.value / 2, outer: inside, thickness, border: 'seam' }
    case 'open':
    case 'cut':
      return null
  }
}
