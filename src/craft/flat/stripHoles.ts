import type { Metres } from '#basis/units.ts'
import { placeRow } from '#stove/opening/row.ts'
import type { Box } from '../box.ts'
import type { Point, Shape } from '../drawing.ts'
import { moved, setDown, turned } from '../move.ts'
import { alongStrip } from './bearing.ts'
import { holeBox, holeSize, leftOutHole, wallHole } from './hole.ts'
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

/** How far round each place that a hole is drawn at lies: its own, and once round where the cut itself runs over an end [mm]. */
const copiesOf = ({ development }: Strip, { along, up, row }: StripHole): readonly number[] => {
  const { length } = development
  const half = (holeSize(row.row.hole).width / 2 - 0.001) * (length / development.roundAt(up))
  return [0, ...(along + half > length ? [-length] : []), ...(along - half < 0 ? [length] : [])]
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
 * The outline of a place. Where the cut runs over an end of the strip it is drawn at both ends: whole on the
 * overlap, cut off at the bare end. On paper the punch gets one cross a hole, where the hole's middle lies on the
 * wrap; tin that overlaps is drilled in both its layers.
 */
export const stripHoleShapes = (strip: Strip, hole: StripHole): readonly Shape[] => {
  const { development, tab } = strip
  const shapes = (hole.leftOut ? leftOutHole : wallHole)(hole.row.row.hole, { x: 0, y: 0 })
  const places = placesOf(strip, hole)
  const { left, right } = hole.box
  return places.flatMap(({ along, middle }, copy) => {
    const drawn =
      copy > 0 && strip.stuff === 'paper' ? shapes.filter(({ layer }) => layer !== 'dimension') : shapes
    const here = drawn.map((shape) => setDown(shape, middle, development.turnAt(along)))
    // Arms of a cross may reach over an end that the hole itself keeps clear of.
    if (along + left >= 0 && along + right <= development.length + tab) return here
    return here
      .flatMap((shape) => trimmedAt(strip, shape, 0, 'right'))
      .flatMap((shape) => trimmedAt(strip, shape, development.length + tab, 'left'))
  })
}
