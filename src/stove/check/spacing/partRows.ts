import type { RowOpening } from '#stove/model.ts'
import { called, heightOnWall } from '../phrase.ts'
import { clearsZones, MARK } from './clearHeight.ts'
import type { Wall } from './wall.ts'
import { closestBetweenRows, movedOutlines, type WallOutline } from './wallOutline.ts'
import { HAIR, lesserWeb, type Web, webOfWallHole } from './web.ts'

/** A row with its openings on the unrolled wall. */
export interface LaidRow {
  readonly opening: string
  readonly row: RowOpening
  readonly outlines: readonly WallOutline[]
}

/** Two rows that are too near each other, on a wall with others. */
export interface MeetingRows {
  readonly wall: Wall
  readonly lower: LaidRow
  readonly upper: LaidRow
  /** Every other row of the wall. */
  readonly others: readonly LaidRow[]
  readonly web: Web
}

/** The web two rows ask of each other. */
export const webBetween = ({ row: one }: LaidRow, { row: other }: LaidRow, sheet: number): Web =>
  lesserWeb(webOfWallHole(one.hole, sheet), webOfWallHole(other.hole, sheet))

const moved = (laid: LaidRow, circumference: number, rise: number, turned: number): LaidRow => ({
  ...laid,
  outlines: movedOutlines(laid.outlines, circumference, rise, turned),
})

const gapBetween = (one: LaidRow, other: LaidRow, circumference: number): number =>
  closestBetweenRows(one.outlines, other.outlines, circumference)?.gap ?? Number.POSITIVE_INFINITY

/** Whether a moved row comes no nearer to the other rows than a note. */
const isFree = (laid: LaidRow, { wall, others }: MeetingRows): boolean =>
  others.every(
    (other) => gapBetween(laid, other, wall.circumference) >= webBetween(laid, other, wall.sheet).poor - HAIR,
  )

/** The least whole number of half millimetres that brings the rows apart; the gap grows with every step. */
const stepsApart = ({ wall, lower, upper, web }: MeetingRows): number => {
  const clears = (steps: number): boolean =>
    gapBetween(lower, moved(upper, wall.circumference, steps * MARK, 0), wall.circumference) >=
    web.full - HAIR
  let [low, high] = [0, 1]
  // No wall is higher than this many steps.
  while (!clears(high) && high < 8192) [low, high] = [high, high * 2]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (clears(middle)) high = middle
    else low = middle
  }
  return high
}

/** A row put at another height, if there is room for it there. */
const putAt = (laid: LaidRow, rise: number, meeting: MeetingRows): string | null => {
  const { wall } = meeting
  const height = laid.row.height + rise
  const fits =
    clearsZones(laid.row, height, wall, webOfWallHole(laid.row.hole, wall.sheet)) &&
    isFree(moved(laid, wall.circumference, rise, 0), meeting)
  return fits ? `put ${called(laid.opening)} ${heightOnWall(laid.row, height, wall.height)}` : null
}

/** The smallest turn of the upper row in whole degrees within one pitch that brings the rows apart. */
const turned = (meeting: MeetingRows): string | null => {
  const { wall, lower, upper, web } = meeting
  for (let size = 1; size <= 360 / upper.row.count; size += 1) {
    for (const turn of [size, -size]) {
      const there = moved(upper, wall.circumference, 0, turn)
      if (gapBetween(lower, there, wall.circumference) >= web.full - HAIR && isFree(there, meeting))
        return `turn ${called(upper.opening)} ${size}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`
    }
  }
  return null
}

/** How to bring two rows apart: turn one, raise the upper, lower the lower, whatever there is room for. */
export const partRows = (meeting: MeetingRows): string => {
  const apart = stepsApart(meeting) * MARK
  const ways = [
    turned(meeting),
    putAt(meeting.upper, apart, meeting) ?? putAt(meeting.lower, -apart, meeting),
  ].filter((way) => way !== null)
  if (ways.length === 0) return 'Use smaller openings in one of them, or put one of them on another part.'
  const sentence = ways.join(', or ')
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`
}
