import { type Millimetres, toMillimetres } from '#basis/units.ts'
import { bottomOpening, topOpening, type WhichEnd } from '#stove/can/ends.ts'
import { bodyAtEnd, insideAtEnd } from '#stove/can/taper.ts'
import type { Can, CanPart, DiscPart, Face, Opening, RowOpening } from '#stove/model.ts'
import { endsNote } from './endsWording.ts'
import { both } from './wording.ts'

/** An opening that lies in a flat face. */
export type FaceOpening = Exclude<Opening, RowOpening>

/** A flat face with its openings: the end of a can or the face of a disc. */
export interface FlatDisc {
  readonly title: string
  /** `paper`: laid on an end that is there already. `tin`: the disc is cut out by its outline. */
  readonly stuff: 'paper' | 'tin'
  readonly radius: Millimetres
  /** Radius of what is already open in the middle, 0 for a whole face. */
  readonly openRadius: Millimetres
  /** Which side the printed paper lies on. Seen from below, bearings run anticlockwise. */
  readonly seen: 'from above' | 'from below'
  readonly openings: readonly { readonly name: string; readonly opening: FaceOpening }[]
  /** Words in the middle of a face without openings. */
  readonly label?: readonly string[]
  readonly notes: readonly string[]
}

/** Radius less than the recess of a seamed end that lets paper lie flat in it [mm]. Workshop judgement, no source. */
const PLAY_IN_RECESS = 0.5

const openingsIn = (openings: CanPart['openings'], face: Face): FlatDisc['openings'] =>
  [...openings].flatMap(([name, opening]) =>
    opening.kind !== 'row' && opening.face === face ? [{ name, opening }] : [],
  )

/** Radius of the paper on a can's end [mm]: in a countersunk end it must lie flat inside the rim. */
const paperRadius = (can: Can, which: WhichEnd): number =>
  can[which].kind === 'plain'
    ? toMillimetres(insideAtEnd(can, which).value) / 2 - toMillimetres(can.endWall) - PLAY_IN_RECESS
    : toMillimetres(bodyAtEnd(can, which).value) / 2

const endNote = (can: Can, which: WhichEnd, radius: number): string => {
  const size = `Paper Ø ${both((2 * radius) / 1000)}`
  return can[which].kind === 'plain'
    ? `${size}: drops into the recess of the ${which}, which centres it.`
    : `${size}: as wide as the can’s body; centre it by its edge.`
}

/** The drilled ends of a can. */
export const canEnds = (name: string, part: CanPart): readonly FlatDisc[] =>
  (['bottom', 'top'] as const).flatMap((which): readonly FlatDisc[] => {
    const openings = openingsIn(part.openings, which)
    if (openings.length === 0) return []
    const radius = paperRadius(part.can, which)
    const open = which === 'bottom' ? bottomOpening(part.can) : topOpening(part.can)
    const seen = which === 'bottom' ? 'from below' : 'from above'
    return [
      {
        title: `${which === 'bottom' ? 'Bottom' : 'Top'} of ${name}, ${seen}`,
        stuff: 'paper',
        radius: radius as Millimetres,
        openRadius: (open === null ? 0 : Math.min(radius, toMillimetres(open.value) / 2)) as Millimetres,
        seen,
        openings,
        notes: [
          `${endNote(part.can, which, radius)} Lay it on from outside, printed side out, FRONT to the can’s front.`,
        ],
      },
    ]
  })

/**
 * The ends that are cut out of a can, as what comes out: for a can with nothing else to draw. The line is the inside of the
 * wall, which the opener follows; ends of one size are one drawing.
 */
export const cutOutEnds = (name: string, { can }: CanPart): readonly FlatDisc[] => {
  const ends = (['bottom', 'top'] as const).filter((which) => can[which].kind === 'open')
  const inside = (which: WhichEnd): number => insideAtEnd(can, which).value
  const alike = ends.length === 2 && Math.abs(inside('bottom') - inside('top')) < 1e-6
  return (alike ? (['top'] as const) : ends).map((which): FlatDisc => {
    const seen = which === 'bottom' ? 'from below' : 'from above'
    const end = which === 'bottom' ? 'Bottom' : 'Top'
    return {
      title: alike ? `Both ends of ${name}, cut out` : `${end} of ${name}, ${seen}, cut out`,
      stuff: 'tin',
      radius: ((inside(which) * 1000) / 2) as Millimetres,
      openRadius: 0 as Millimetres,
      seen,
      openings: [],
      label: [alike ? `both ends of ${name}` : `${which} end of ${name}`, 'cut out along this line'],
      notes: [
        `Ø ${both(inside(which))}, the inside of the wall. ${endsNote(can).join(' ')} Nothing else is cut or drilled in this can.`,
      ],
    }
  })
}

const HANGING =
  'The can hangs in the opening by its rim: cut a little inside the line, then file out to it until the can drops in.'

/** A disc part, cut out and drilled. */
export const discFace = (name: string, part: DiscPart): FlatDisc => ({
  title: `Disc of ${name}, from above`,
  stuff: 'tin',
  radius: (toMillimetres(part.diameter.value) / 2) as Millimetres,
  openRadius: 0 as Millimetres,
  seen: 'from above',
  openings: openingsIn(part.openings, 'face'),
  notes: [
    `Ø ${both(part.diameter.value)} of tin ${both(part.thickness)} thick. Glue the paper on the side that will be the upper one; punch, drill and cut, then deburr both sides.`,
    ...(part.role === 'lid ring' ? [HANGING] : []),
  ],
})
