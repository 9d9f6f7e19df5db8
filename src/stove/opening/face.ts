import type { Metres } from '#basis/units.ts'
import { insideAtEnd } from '#stove/can/taper.ts'
import type { Face, Part } from '#stove/model.ts'

/** The tin of a flat face: a ring about the part's axis, or a whole disc where `inner` is 0. */
export interface FaceRing {
  readonly inner: Metres
  readonly outer: Metres
}

/**
 * The tin an opening of this face is cut in, by radius [m]. Of a can's end it reaches to the inside of
 * the wall. Null where there is none: the end is open, or the part has no such face.
 */
export const faceRing = (part: Part, face: Face): FaceRing | null => {
  if (part.form === 'band') return null
  if (part.form === 'disc')
    return face === 'face' ? { inner: 0 as Metres, outer: (part.diameter.value / 2) as Metres } : null
  if (face === 'face') return null
  const outer = (insideAtEnd(part.can, face).value / 2) as Metres
  const end = part.can[face]
  switch (end.kind) {
    case 'plain':
    case 'drawn':
      return { inner: 0 as Metres, outer }
    case 'pull-off':
    case 'friction':
      return { inner: (end.opening.value / 2) as Metres, outer }
    case 'open':
    case 'cut':
      return null
  }
}
