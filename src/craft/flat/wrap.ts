import { type Metres, type Millimetres, metres, toMillimetres } from '#basis/units.ts'
import { isSeamed } from '#stove/can/ends.ts'
import type { Can, CanPart } from '#stove/model.ts'
import { placeRow, wallHoleSize, wrapBearing } from '#stove/opening/row.ts'
import { chooseJoin, type Span } from './join.ts'
import type { NamedRow, Strip } from './strip.ts'
import { bearingText, both } from './wording.ts'

/** Copy paper of 80 g/m² is about 0.1 mm thick [m]. Source: can_seams_tinplate.json, circumference_division. */
export const PAPER_THICKNESS = metres(0.0001)

/**
 * Length of a sheet of the given thickness once round a cylinder, measured where bending neither
 * stretches nor squeezes it: halfway through, at the diameter plus one thickness (half of it on either
 * side). Of 0.1 mm paper that adds π × 0.1 mm = 0.31 mm to the can's own circumference, and a hole
 * marked on the flat paper lands at its true bearing. [m]
 */
export const lengthRound = (diameter: Metres, thickness: Metres): Metres =>
  (Math.PI * (diameter + thickness)) as Metres

/** Room for glue where one end of the paper goes under the other [mm]. Workshop judgement, no source. */
const GLUE_TAB = 12 as Millimetres

/** Paper kept above the highest opening of a can that stands taller [m]: scale and labels go there. */
const ABOVE_OPENINGS = 0.024

/** Tin or paper kept whole beside an opening where the ends meet [mm]. */
const CLEAR_OF_JOIN = 2

/** The stretches of wall that openings take, with a little room to either side. */
export const openingSpans = (rows: readonly NamedRow[], circumference: Metres): readonly Span[] =>
  rows.flatMap(({ row }) => {
    const half =
      ((toMillimetres(wallHoleSize(row.hole).round) / 2 + CLEAR_OF_JOIN) / toMillimetres(circumference)) * 360
    return placeRow({ ...row, leftOut: [] }, circumference).map(({ bearing }) => ({ bearing, half }))
  })

/** The rows among a part's openings. */
export const rowsOf = (openings: CanPart['openings']): readonly NamedRow[] =>
  [...openings].flatMap(([name, opening]) => (opening.kind === 'row' ? [{ name, row: opening }] : []))

/**
 * Lower and upper edge of the paper [m]. Paper lies on the plain body only: a double seam stands out
 * beyond it, so there the paper's edge rests against the seam, which also keeps it level.
 */
const paperEdges = (can: Can, rows: readonly NamedRow[]): { readonly low: Metres; readonly high: Metres } => {
  const low = isSeamed(can.bottom) ? can.seamHeight : 0
  const end = can.height.value - (isSeamed(can.top) ? can.seamHeight : 0)
  const openingsEnd = Math.max(...rows.map(({ row }) => row.height + wallHoleSize(row.hole).axial / 2))
  return { low: metres(low), high: metres(Math.min(end, openingsEnd + ABOVE_OPENINGS)) }
}

const lowerEdgeText = (can: Can): readonly string[] =>
  isSeamed(can.bottom)
    ? ['lower edge rests on the bottom seam,', `${both(can.seamHeight)} above the can’s bottom edge`]
    : ['lower edge is level', 'with the can’s bottom edge']

const upperEdgeText = (can: Can, high: Metres): readonly string[] => {
  const bodyEnd = can.height.value - (isSeamed(can.top) ? can.seamHeight : 0)
  if (high < bodyEnd - 1e-9) return []
  return isSeamed(can.top)
    ? ['upper edge meets the top seam']
    : ['upper edge is level', 'with the can’s top edge']
}

const joinNote = (can: Can, join: number): string => {
  const meet = `The ends meet at ${bearingText(join)}`
  if (can.sideSeam === null) return `${meet}.`
  const seam = wrapBearing(can.sideSeam)
  return seam === join
    ? `${meet}, on the can’s side seam.`
    : `${meet}; the can’s side seam runs under the dashed line at ${bearingText(seam)}.`
}

/** The wrap of a can's wall, or null for a can with no opening in it. */
export const canWrap = (name: string, part: CanPart): Strip | null => {
  const rows = rowsOf(part.openings)
  if (rows.length === 0) return null
  const { can } = part
  const body = can.bodyDiameter.value
  const length = lengthRound(body, PAPER_THICKNESS)
  const join = chooseJoin(openingSpans(rows, length), can.sideSeam ?? 180)
  const { low, high } = paperEdges(can, rows)
  return {
    title: `Wrap of ${name}`,
    stuff: 'paper',
    length: toMillimetres(length),
    low,
    high,
    tab: GLUE_TAB,
    join,
    rows,
    sideSeam: can.sideSeam,
    beads: can.beads,
    lowerEdge: lowerEdgeText(can),
    upperEdge: upperEdgeText(can, high),
    tabText: ['glue: goes under', 'the other end'],
    notes: [
      `For a can body Ø ${both(body)}, measured outside between the seams: ${both(length)} from end to end, which is π times body and one paper thickness (0.1 mm, 0.004 in). ${joinNote(can, join)} If they miss each other on the can by more than 1 mm (3/64 in), measure the can again.`,
    ],
  }
}
