import { type Metres, type Millimetres, toMillimetres } from '#basis/units.ts'
import { boxRound, grow } from '../box.ts'
import type { Drawing, Layer, Point, Shape } from '../drawing.ts'
import { openRoom, type Room } from '../lettering/room.ts'
import { moved } from '../move.ts'
import { alongStrip } from './bearing.ts'
import { CROSS_BEYOND } from './hole.ts'
import { bearingScale } from './scale.ts'
import type { Strip } from './strip.ts'
import { copiesOf, stripHoleShapes, stripHoles } from './stripHoles.ts'
import { stripLettering } from './stripLettering.ts'
import { rowNote } from './wording.ts'

/** Bare paper round everything [mm]. */
const MARGIN = 2
/** How much of a bead shows at either end of the strip [mm]. */
const BEAD_TICK = 5

const line = (layer: Layer, from: Point, to: Point): Shape => ({ kind: 'line', layer, from, to })

/** The strip's outline, its overlap with slanted corners, and the line where the ends meet. */
const outline = ({ stuff, length, tab }: Strip, height: number): readonly Shape[] => {
  const slant = Math.min(3, height / 4)
  const layer: Layer = stuff === 'tin' ? 'cut' : 'paper'
  return [
    {
      kind: 'polyline',
      layer,
      closed: true,
      points: [
        { x: 0, y: 0 },
        { x: length, y: 0 },
        { x: length + tab, y: slant },
        { x: length + tab, y: height - slant },
        { x: length, y: height },
        { x: 0, y: height },
      ],
    },
    line('mark', { x: length, y: 0 }, { x: length, y: height }),
  ]
}

/** Centre line of every row, and what is known of seam and beads. */
const guides = (strip: Strip, height: number, room: Room): readonly Shape[] => {
  const up = (value: Metres): number => toMillimetres(value) - toMillimetres(strip.low)
  const shapes: Shape[] = []
  const across = (y: number): void => {
    shapes.push(line('mark', { x: 0, y }, { x: strip.length, y }))
    room.block({ left: 0, right: strip.length, bottom: y - 0.2, top: y + 0.2 })
  }
  const upright = (x: number): void => {
    shapes.push(line('mark', { x, y: 0 }, { x, y: height }))
    room.block({ left: x - 0.2, right: x + 0.2, bottom: 0, top: height })
  }
  for (const y of new Set(strip.rows.map(({ row }) => up(row.height)))) across(y)
  if (strip.sideSeam !== null && alongStrip(strip, strip.sideSeam) > 0.5)
    upright(alongStrip(strip, strip.sideSeam))
  for (const y of strip.beads.flatMap(({ from, to }) => [up(from), up(to)])) {
    if (y <= 0 || y >= height) continue
    for (const [from, to] of [
      [0, BEAD_TICK],
      [strip.length - BEAD_TICK, strip.length],
    ] as const) {
      shapes.push(line('mark', { x: from, y }, { x: to, y }))
      room.block({ left: from, right: to, bottom: y - 0.2, top: y + 0.2 })
    }
  }
  return shapes
}

/** The strip with its lower left corner at the origin. */
const stripShapes = (strip: Strip, height: number): readonly Shape[] => {
  const room = openRoom({ left: 0, bottom: 0, right: strip.length + strip.tab, top: height })
  const holes = stripHoles(strip)
  const holeShapes = holes.flatMap((hole) => stripHoleShapes(strip, hole))
  for (const { row, box, middle, leftOut } of holes) {
    for (const by of copiesOf(strip, box)) {
      const centre = { x: middle.x + by, y: middle.y }
      if (row.row.hole.shape === 'round')
        room.blockCircle(centre, toMillimetres(row.row.hole.diameter) / 2 + (leftOut ? 0 : CROSS_BEYOND))
      else room.block({ ...box, left: box.left + by, right: box.right + by })
    }
  }
  room.block({ left: strip.length - 0.2, right: strip.length + 0.2, bottom: 0, top: height })
  const guideLines = guides(strip, height, room)
  const scale = bearingScale(strip, height, room)
  return [
    ...outline(strip, height),
    ...guideLines,
    ...holeShapes,
    ...scale,
    ...stripLettering(strip, height, room),
  ]
}

const notesOf = (strip: Strip): readonly string[] => [
  ...strip.rows.map(({ name, row }) =>
    rowNote(name, row, { pitch: (strip.length / 1000 / row.count) as Metres, paperLow: strip.low }),
  ),
  ...strip.notes,
]

/** Draws a strip at true size. */
export const drawStrip = (strip: Strip): Drawing => {
  const shapes = stripShapes(strip, toMillimetres(strip.high) - toMillimetres(strip.low))
  const { left, right, bottom, top } = grow(boxRound(shapes), MARGIN)
  return {
    title: strip.title,
    width: (right - left) as Millimetres,
    height: (top - bottom) as Millimetres,
    shapes: shapes.map((shape) => moved(shape, -left, -bottom)),
    notes: notesOf(strip),
  }
}
