import { type Metres, type Millimetres, toMillimetres } from '#basis/units.ts'
import { around, boxRound, grow, shapeBox } from '../box.ts'
import type { Drawing, Point, Shape } from '../drawing.ts'
import { openRoom, type Room } from '../lettering/room.ts'
import { moved } from '../move.ts'
import { alongStrip } from './bearing.ts'
import { CROSS_BEYOND } from './hole.ts'
import { outline } from './outline.ts'
import { bearingScale } from './scale.ts'
import type { Strip } from './strip.ts'
import { placesOf, stripHoleShapes, stripHoles } from './stripHoles.ts'
import { stripLettering } from './stripLettering.ts'
import { rowNote } from './wording.ts'

/** Bare paper round everything [mm]. */
const MARGIN = 2
/** How much of a bead shows at either end of the strip [mm]. */
const BEAD_TICK = 5
/** A bent or slanted line is kept free of text in steps of this length [mm]. */
const STEP = 2

/** Keeps text off a line that runs through these points. */
const blockAlong = (room: Room, points: readonly Point[]): void => {
  for (const [index, to] of points.slice(1).entries())
    room.block(grow(around([points[index] as Point, to]), 0.2))
}

/** Keeps text off a line round the wall or straight up it. */
const blockLine = (
  room: Room,
  { development: { at, isTapered } }: Strip,
  from: readonly [along: number, up: number],
  to: readonly [along: number, up: number],
): void => {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1])
  const steps = isTapered ? Math.max(1, Math.ceil(long / STEP)) : 1
  const points = Array.from({ length: steps + 1 }, (_, index) => {
    const share = index / steps
    return at(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]))
  })
  blockAlong(room, points)
}

/** Centre line of every row, and what is known of seam and beads. */
const guides = (strip: Strip, room: Room): readonly Shape[] => {
  const { at, round, upOf, length, height } = strip.development
  const shapes: Shape[] = []
  const across = (up: number, from: number, to: number): void => {
    shapes.push(round('mark', up, from, to))
    blockLine(room, strip, [from, up], [to, up])
  }
  for (const up of new Set(strip.rows.map(({ row }) => upOf(row.height)))) across(up, 0, length)
  if (strip.sideSeam !== null) {
    const along = alongStrip(strip, strip.sideSeam)
    if (along > 0.5) {
      shapes.push({ kind: 'line', layer: 'mark', from: at(along, 0), to: at(along, height) })
      blockLine(room, strip, [along, 0], [along, height])
    }
  }
  for (const up of strip.beads.flatMap(({ from, to }) => [upOf(from), upOf(to)])) {
    if (up <= 0 || up >= height) continue
    across(up, 0, BEAD_TICK)
    across(up, length - BEAD_TICK, length)
  }
  return shapes
}

/** Paper on which labels look for places: the strip with its overlap, whatever its shape. */
const roomOn = (strip: Strip): Room => {
  const { isTapered, length, height, placeOf } = strip.development
  const end = length + strip.tab
  if (!isTapered) return openRoom({ left: 0, bottom: 0, right: end, top: height })
  const lies = (point: Point): boolean => {
    const { along, up } = placeOf(point)
    return along >= 0 && along <= end && up >= 0 && up <= height
  }
  return openRoom(boxRound(outline(strip)), ({ left, right, bottom, top }) =>
    [left, (left + right) / 2, right].every((x) =>
      [bottom, (bottom + top) / 2, top].every((y) => lies({ x, y })),
    ),
  )
}

const stripShapes = (strip: Strip): readonly Shape[] => {
  const room = roomOn(strip)
  const { length, height } = strip.development
  const holes = stripHoles(strip)
  const holeShapes = holes.flatMap((hole) => stripHoleShapes(strip, hole))
  for (const hole of holes) {
    const { row, leftOut, box } = hole
    for (const { middle } of placesOf(strip, hole)) {
      if (row.row.hole.shape === 'round')
        room.blockCircle(middle, toMillimetres(row.row.hole.diameter) / 2 + (leftOut ? 0 : CROSS_BEYOND))
      else if (!strip.development.isTapered)
        room.block({
          left: box.left + middle.x,
          right: box.right + middle.x,
          bottom: box.bottom + middle.y,
          top: box.top + middle.y,
        })
    }
  }
  if (strip.development.isTapered)
    for (const shape of holeShapes) {
      if (shape.kind === 'polyline') room.block(shapeBox(shape))
      if (shape.kind === 'circle') room.blockCircle(shape.centre, shape.radius + CROSS_BEYOND)
    }
  blockLine(room, strip, [length, 0], [length, height])
  const guideLines = guides(strip, room)
  const scale = bearingScale(strip, room)
  return [...outline(strip), ...guideLines, ...holeShapes, ...scale, ...stripLettering(strip, room)]
}

const notesOf = ({ rows, development: { upOf, roundAt, isTapered }, notes }: Strip): readonly string[] => [
  ...rows.map(({ name, row }) => {
    const up = upOf(row.height)
    return rowNote(name, row, {
      pitch: (roundAt(up) / 1000 / row.count) as Metres,
      // Where the paper begins at the can's own edge and stands upright there is nothing to add.
      upPaper: isTapered || up < toMillimetres(row.height) - 1e-9 ? ((up / 1000) as Metres) : null,
    })
  }),
  ...notes,
]

/** Draws a strip at true size, its lower left corner at the origin. */
export const drawStrip = (strip: Strip): Drawing => {
  const shapes = stripShapes(strip)
  const { left, right, bottom, top } = grow(boxRound(shapes), MARGIN)
  return {
    title: strip.title,
    width: (right - left) as Millimetres,
    height: (top - bottom) as Millimetres,
    shapes: shapes.map((shape) => moved(shape, -left, -bottom)),
    notes: notesOf(strip),
  }
}
