import type { Metres } from '#basis/units.ts'
import { placeRow } from '#stove/opening/row.ts'
import { type Box, grow } from '../box.ts'
import type { Point, Shape } from '../drawing.ts'
import { moved, setDown, turned } from '../move.ts'
import { alongStrip } from './bearing.ts'
import { holeBox, leftOutHole, wallHole } from './hole.ts'
import type { NamedRow, Strip } from './strip.ts'
import { trimAt } from './trim.ts'

/** One place of a row on the strip, drilled or left out. */
export interface StripHole {
  readonly row: NamedRow
  readonly position: number
  readonly leftOut: boolean
  /** Of its middle [mm]. */
  readonly along: number
  readonly up: number
  /** What it fills about its middle [mm]. */
  readonly box: Box
}

/** Every place of every row. */
export const stripHoles = (strip: Strip): readonly StripHole[] =>
  strip.rows.flatMap((named) => {
    const { row } = named
    const { upOf, length } = strip.development
    return placeRow({ ...row, leftOut: [] }, (length / 1000) as Metres).map(
      ({ position, bearing }): StripHole => ({
        row: named,
        position,
        leftOut: row.leftOut.includes(position),
        along: alongStrip(strip, bearing),
        up: upOf(row.height),
        box: holeBox(row.hole, { x: 0, y: 0 }),
      }),
    )
  })

/** How far round each place that a hole is drawn at lies: its own, and once round where it runs over an end [mm]. */
export const copiesOf = ({ development }: Strip, { along, up, box }: StripHole): readonly number[] => {
  const { left, right } = grow(box, -0.001)
  const { length } = development
  const wide = length / development.roundAt(up)
  return [
    0,
    ...(along + right * wide > length ? [-length] : []),
    ...(along + left * wide < 0 ? [length] : []),
  ]
}

/** A shape cut off at the end of the paper at `along`, which runs straight up the wall there. */
const trimmedAt = (
  { development: { at, turnAt } }: Strip,
  shape: Shape,
  along: number,
  keep: 'left' | 'right',
): readonly Shape[] => {
  const [foot, turn] = [at(along, 0), turnAt(along)]
  return trimAt(turned(moved(shape, -foot.x, -foot.y), -turn), 0, keep).map((rest) =>
    setDown(rest, foot, turn),
  )
}

/** Where a hole is drawn, round the wall [mm]: how far along, and the point of the drawing. */
export const placesOf = (
  strip: Strip,
  hole: StripHole,
): readonly { readonly along: number; readonly middle: Point }[] =>
  copiesOf(strip, hole).map((by) => ({
    along: hole.along + by,
    middle: strip.development.at(hole.along + by, hole.up),
  }))

/**
 * The outline of a place. Where it runs over an end of the strip it is drawn at both ends: whole on the
 * overlap, cut off at the bare end.
 */
export const stripHoleShapes = (strip: Strip, hole: StripHole): readonly Shape[] => {
  const { development, tab } = strip
  const shapes = (hole.leftOut ? leftOutHole : wallHole)(hole.row.row.hole, { x: 0, y: 0 })
  const places = placesOf(strip, hole)
  return places.flatMap(({ along, middle }) => {
    const here = shapes.map((shape) => setDown(shape, middle, development.turnAt(along)))
    if (places.length === 1) return here
    return here
      .flatMap((shape) => trimmedAt(strip, shape, 0, 'right'))
      .flatMap((shape) => trimmedAt(strip, shape, development.length + tab, 'left'))
  })
}
