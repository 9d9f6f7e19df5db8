import { long } from '#basis/text/bothUnits.ts'
import type { CentringShape } from './centring.ts'
import type { CollarShape } from './collarShape.ts'
import type { GuideOptions } from './options.ts'

const both = (millimetres: number): string => long(millimetres / 1000)

const bitOf = ({ bit, pilot }: GuideOptions): string =>
  bit === 'full' ? 'the bit of each hole’s own size' : `a ${long(pilot)} pilot bit`

/** The inch screw nearest to an M4: common practice, no source. */
const SCREW = 'M4 (#8-32)'

const pieces = ['', 'one piece', 'two halves', 'three pieces', 'four pieces', 'five pieces', 'six pieces']

/** How to print, put on and drill through a collar, as sentences. */
export const collarNotes = (part: string, shape: CollarShape, options: GuideOptions): readonly string[] => {
  const { datum, split, recess, lip } = shape
  const edge = `${datum} edge of the ${part}`
  const print = `Print it as it lies, flat on the bed, without supports; ${lip === null ? `what lies on the bed goes with the ${datum} edge` : `the ring that lies on the bed goes under the ${datum} edge`}.`
  const putOn =
    split === null
      ? recess === null
        ? `Push the ${part} into the collar, ${datum} edge first, until it stands on the ring.`
        : `Slide the collar on over the end without a seam until the seam of the ${datum} sits in its recess.`
      : `It comes in ${pieces[split.pieces]}: put them round the ${part} and draw them on with ${SCREW} screws through the ears.`
  const level =
    split === null && lip !== null
      ? null
      : `Stand the ${part} on a flat board, ${datum} edge down, and the collar on the same board: heights are set by the ${edge}.`
  const height =
    datum === 'top'
      ? `These holes are set by the ${edge}, to which they are nearer: a can that is taller or lower than measured moves them by as much.`
      : null
  return [
    print,
    putOn,
    ...(level === null ? [] : [level]),
    'Turn it until the groove on the outside stands at the front mark' +
      (shape.sideSeam === null ? '.' : '; the groove inside goes over the side seam.'),
    `Drill with ${bitOf(options)} through each guide hole, square to the wall; a position that is left out has none. Take the collar off before drilling to size.`,
    ...(height === null ? [] : [height]),
  ]
}

/** The same of a centring disc. */
export const centringNotes = (
  part: string,
  { kind, face, radius }: CentringShape,
  options: GuideOptions,
): readonly string[] => {
  const where = face === 'face' ? `the ${part}` : `the ${face} of the ${part}`
  const size = both(2 * radius)
  return [
    kind === 'plug'
      ? `Print it flat on the bed, without supports; it is ${size} across and the side that is up while printing is the one drilled from.`
      : `Print it flat on the bed, rim up, without supports; its inside is ${size} across and the side on the bed is the one drilled from.`,
    kind === 'plug'
      ? `Drop it into the recess of ${where}, notch to the front, and drill from outside.`
      : face === 'face'
        ? `Lay the ${part} into it, upper side down, front to the notch; turn both over and drill from above.`
        : `Put it over ${where}, notch to the front, and drill from outside.`,
    `Drill with ${bitOf(options)}; put a block of wood behind the tin. A bore has its guide hole in the middle.`,
  ]
}
