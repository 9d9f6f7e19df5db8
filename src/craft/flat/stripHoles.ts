import { toMillimetres } from '#basis/units.ts'
import { placeRow } from '#stove/opening/row.ts'
import { type Box, grow } from '../box.ts'
import type { Point, Shape } from '../drawing.ts'
import { moved } from '../move.ts'
import { alongStrip } from './bearing.ts'
import { holeBox, leftOutHole, wallHole } from './hole.ts'
import type { NamedRow, Strip } from './strip.ts'
import { trimAt } from './trim.ts'

/** One place of a row on the strip, drilled or left out. */
export interface StripHole {
  readonly row: NamedRow
  readonly position: number
  readonly leftOut: boolean
  /** Lower left corner of the strip at the origin [mm]. */
  readonly middle: Point
  readonly box: Box
}

/** Every place of every row, from the join to the right and up from the strip's lower edge. */
export const stripHoles = (strip: Strip): readonly StripHole[] =>
  strip.rows.flatMap((named) => {
    const { row } = named
    return placeRow({ ...row, leftOut: [] }, (strip.length / 1000) as typeof strip.low).map(
      ({ position, bearing }): StripHole => {
        const middle = {
          x: alongStrip(strip, bearing),
          y: toMillimetres(row.height) - toMillimetres(strip.low),
        }
        return {
          row: named,
          position,
          leftOut: row.leftOut.includes(position),
          middle,
          box: holeBox(row.hole, middle),
        }
      },
    )
  })

/** How far to the right each place that a hole is drawn at lies: its own, and once round where it runs over an end. */
export const copiesOf = (strip: Strip, box: Box): readonly number[] => {
  const { left, right } = grow(box, -0.001)
  return [0, ...(right > strip.length ? [-strip.length] : []), ...(left < 0 ? [strip.length] : [])]
}

/**
 * The outline of a place. Where it runs over an end of the strip it is drawn at both ends: whole on the
 * overlap, cut off at the bare end.
 */
export const stripHoleShapes = (strip: Strip, { row, leftOut, middle, box }: StripHole): readonly Shape[] => {
  const shapes = (leftOut ? leftOutHole : wallHole)(row.row.hole, middle)
  const end = strip.length + strip.tab
  const trimmed = (all: readonly Shape[]): readonly Shape[] =>
    all.flatMap((shape) => trimAt(shape, 0, 'right')).flatMap((shape) => trimAt(shape, end, 'left'))
  return copiesOf(strip, box).flatMap((by) => trimmed(shapes.map((shape) => moved(shape, by, 0))))
}
