import { type Metres, type Millimetres, metres, toMillimetres } from '#basis/units.ts'
import { isSeamed } from '#stove/can/ends.ts'
import { bodyAt } from '#stove/can/taper.ts'
import type { Can, CanPart } from '#stove/model.ts'
import { placeRow, wallHoleSize, wrapBearing } from '#stove/opening/row.ts'
import { type Development, develop } from './development.ts'
import { endsNote } from './endsWording.ts'
import { chooseJoin, type Span } from './join.ts'
import type { NamedRow, Strip } from './strip.ts'
import { bearingText, both } from './wording.ts'

/** Copy paper of 80 g/m² is about 0.1 mm thick [m]. Source: can_seams_tinplate.json, circumference_division. */
export const PAPER_THICKNESS = metres(0.0001)

/** Room for glue where one end of the paper goes under the other [mm]. Workshop judgement, no source. */
const GLUE_TAB = 12 as Millimetres

/** Paper kept above the highest opening of a can that stands taller [m]: scale and labels go there. */
const ABOVE_OPENINGS = 0.024

/** Tin or paper kept whole beside an opening where the ends meet [mm]. */
const CLEAR_OF_JOIN = 2

/** The stretches of wall that openings take, with a little room to either side. */
export const openingSpans = (
  rows: readonly NamedRow[],
  { roundAt, upOf }: Pick<Development, 'roundAt' | 'upOf'>,
): readonly Span[] =>
  rows.flatMap(({ row }) => {
    const round = roundAt(upOf(row.height))
    const half = ((toMillimetres(wallHoleSize(row.hole).round) / 2 + CLEAR_OF_JOIN) / round) * 360
    return placeRow({ ...row, leftOut: [] }, metres(round / 1000)).map(({ bearing }) => ({ bearing, half }))
  })

/** The rows among a part's openings. */
export const rowsOf = (openings: CanPart['openings']): readonly NamedRow[] =>
  [...openings].flatMap(([name, opening]) => (opening.kind === 'row' ? [{ name, row: opening }] : []))

const isTrimmed = (can: Can): boolean => can.bottom.kind === 'cut' || can.top.kind === 'cut'

/**
 * Lower and upper edge of the paper [m]. Paper lies on the plain body only: a double seam stands out
 * beyond it, so there the paper's edge rests against the seam, which also keeps it level. Of a can that is
 * cut down it reaches all the way, because its edge is what the can is cut along.
 */
const paperEdges = (can: Can, rows: readonly NamedRow[]): { readonly low: Metres; readonly high: Metres } => {
  const low = isSeamed(can.bottom) ? can.seamHeight : 0
  const end = can.height.value - (isSeamed(can.top) ? can.seamHeight : 0)
  const openingsEnd = Math.max(...rows.map(({ row }) => row.height + wallHoleSize(row.hole).axial / 2))
  return {
    low: metres(low),
    high: metres(isTrimmed(can) ? end : Math.min(end, openingsEnd + ABOVE_OPENINGS)),
  }
}

const lowerEdge = (can: Can): readonly string[] => {
  if (isSeamed(can.bottom))
    return ['lower edge rests on the bottom seam,', `${both(can.seamHeight)} above the can’s bottom edge`]
  return can.bottom.kind === 'cut'
    ? ['cut the can off along this edge:', 'it becomes the bottom edge']
    : ['lower edge is level', 'with the can’s bottom edge']
}

const upperEdge = (can: Can, high: Metres): readonly string[] => {
  const bodyEnd = can.height.value - (isSeamed(can.top) ? can.seamHeight : 0)
  if (high < bodyEnd - 1e-9) return []
  if (isSeamed(can.top)) return ['upper edge meets the top seam']
  return can.top.kind === 'cut'
    ? ['cut the can off along this edge:', `${both(can.height.value)} above the bottom edge`]
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

/** What body the wrap is for and how long it is, so that it can be checked before a hole is punched. */
const sizeNote = (can: Can, low: Metres, high: Metres, development: Development): string => {
  const paper = 'π times body and one paper thickness (0.1 mm, 0.004 in)'
  const round = (up: number): string => both(development.roundAt(up) / 1000)
  if (!development.isTapered)
    return `For a can body Ø ${both(can.bodyDiameter.value)}, measured outside between the seams: ${round(0)} from end to end, which is ${paper}.`
  const [lower, upper] = [bodyAt(can, low).value, bodyAt(can, high).value]
  return (
    `For a can that tapers, Ø ${both(lower)} outside at the paper’s lower edge and Ø ${both(upper)} at its upper edge: ` +
    `the edges are arcs, ${round(0)} and ${round(development.height)} from end to end, each ${paper}. Heights above the bottom edge are upright; up the paper, along the slope, they are a little more.`
  )
}

/** The wrap of a can's wall, or null for a can with neither an opening in it nor an edge to cut it off along. */
export const canWrap = (name: string, part: CanPart): Strip | null => {
  const rows = rowsOf(part.openings)
  const { can } = part
  if (rows.length === 0 && !isTrimmed(can)) return null
  const { low, high } = paperEdges(can, rows)
  const development = develop({
    lowDiameter: bodyAt(can, low).value,
    highDiameter: bodyAt(can, high).value,
    low,
    high,
    thickness: PAPER_THICKNESS,
  })
  const join = chooseJoin(openingSpans(rows, development), can.sideSeam ?? 180)
  return {
    title: `Wrap of ${name}`,
    stuff: 'paper',
    development,
    length: development.length as Millimetres,
    low,
    high,
    tab: GLUE_TAB,
    join,
    rows,
    sideSeam: can.sideSeam,
    beads: can.beads,
    lowerEdge: lowerEdge(can),
    upperEdge: upperEdge(can, high),
    cutOut: {
      lower: can.bottom.kind === 'open' ? ['bottom end cut out'] : [],
      upper:
        can.top.kind === 'open' && high >= can.height.value - can.seamHeight - 1e-9
          ? ['top end cut out']
          : [],
    },
    cutEdges: { lower: can.bottom.kind === 'cut', upper: can.top.kind === 'cut' },
    fingerTabs: [],
    tabText: ['glue: goes under', 'the other end'],
    notes: [
      `${sizeNote(can, low, high, development)} ${joinNote(can, join)} If they miss each other on the can by more than 1 mm (3/64 in), measure the can again.`,
      ...endsNote(can),
    ],
  }
}
