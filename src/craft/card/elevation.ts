import { bearingText } from '../flat/wording.ts'
import type { PixelBox } from '../section/sheet.ts'
import type { Board, Spot } from './board.ts'
import {
  heightBeside,
  LEVEL_GAP,
  type Level,
  levelsBeside,
  OFF,
  roomBeside,
  roomUnder,
  stackHeight,
  stackWidth,
  widthUnder,
} from './dimension.ts'
import type { CardFormat } from './format.ts'
import { setOut, size } from './length.ts'
import { drawLeftOut, holeLook, tinFill, tinLine } from './tin.ts'
import { eyeFor, radiusAt, seenHoles, type Wall, widest } from './wall.ts'

export interface Elevation {
  readonly wall: Wall
  /** Names of the openings that this card tells of. */
  readonly told: ReadonlySet<string>
  /** Say how wide it is, under it. */
  readonly width: boolean
}

/** A small can fills its place no further than this [px/mm]. */
const LARGEST_SCALE = 14
/** Between left figures and their line [em]. */
const LEFT_GAP = 0.55

const eyeWords = (eye: number): string =>
  eye === 0 ? 'seen from the front' : eye === 180 ? 'seen from behind' : `seen from ${bearingText(eye)}`

/** How far figures may reach below the edge they are measured from [em]. */
const BELOW = 0.3

/** Room for what stands over a picture [em]. */
const CAPTION = 1.25

interface Frame {
  readonly axis: number
  readonly bottom: number
  readonly scale: number
}

const spot = (
  { axis, bottom, scale }: Frame,
  { x, z }: { readonly x: number; readonly z: number },
): Spot => ({
  x: axis + x * scale,
  y: bottom - z * scale,
})

const drawBody = (board: Board, format: CardFormat, frame: Frame, wall: Wall): void => {
  const { theme } = board
  const side = (z: number): readonly [Spot, Spot] => [
    spot(frame, { x: -radiusAt(wall, z), z }),
    spot(frame, { x: radiusAt(wall, z), z }),
  ]
  const [[lowLeft, lowRight], [highLeft, highRight]] = [side(0), side(wall.height)]
  board.rule([lowLeft, lowRight, highRight, highLeft], true, { ...tinFill(board), ...tinLine(board, format) })
  const level = { fill: 'none', stroke: theme.faint, 'stroke-width': format.stroke.thin }
  for (const { from, to } of wall.beads) for (const z of [from, to]) board.rule(side(z), false, level)
  for (const { radius, from, to } of wall.seams)
    board.rule(
      [
        spot(frame, { x: -radius, z: from }),
        spot(frame, { x: radius, z: from }),
        spot(frame, { x: radius, z: to }),
        spot(frame, { x: -radius, z: to }),
      ],
      true,
      { fill: theme.hairline, ...tinLine(board, format) },
    )
}

const drawHoles = (
  board: Board,
  format: CardFormat,
  frame: Frame,
  { wall, told }: Elevation,
  eye: number,
): void => {
  // What this card tells of comes last, over all else.
  const rows = [...wall.rows].sort((a, b) => Number(told.has(a.name)) - Number(told.has(b.name)))
  for (const { name, row } of rows)
    for (const { outline, leftOut } of seenHoles(wall, row, eye)) {
      const points = outline.map((point) => spot(frame, point))
      if (leftOut) drawLeftOut(board, format, points)
      else board.rule(points, true, holeLook(board, format, told.has(name)))
    }
}

/** A wall from outside with its openings, its height and width, and how high the openings lie that the card tells of. */
export const drawElevation = (
  board: Board,
  format: CardFormat,
  region: PixelBox,
  elevation: Elevation,
): void => {
  const { wall, told } = elevation
  const em = format.em.dimension
  const rows = wall.rows.filter(({ name }) => told.has(name))
  const eye = eyeFor(rows)
  const heights = new Map(rows.map(({ row }) => [setOut(row.height), row.height * 1000]))
  const heightText = size(wall.height / 1000)
  const widthText = size((2 * wall.radius.bottom) / 1000)
  const left =
    heights.size === 0
      ? 0
      : Math.max(...[...heights.keys()].map((text) => stackWidth(board, format, text))) +
        (OFF + LEFT_GAP + 0.1) * em
  const right = roomBeside(board, format, [heightText])
  const top = region.top + CAPTION * em
  const under = elevation.width ? roomUnder(format) : 0
  const scale = Math.min(
    (region.right - region.left - left - right) / (2 * widest(wall)),
    (region.bottom - top - under) / wall.height,
    LARGEST_SCALE,
  )
  const [width, height] = [2 * widest(wall) * scale, wall.height * scale]
  // Figures beside a low wall stand taller than it.
  const figures = Math.max(1, heights.size) * (stackHeight(format) + LEVEL_GAP * em)
  const tall = Math.max(height, figures - BELOW * em)
  const slack = region.right - region.left - left - right - width
  const frame: Frame = {
    axis: region.left + left + slack / 2 + width / 2,
    bottom: top + (region.bottom - top - under - tall) / 2 + tall,
    scale,
  }
  board.letter(
    { text: eyeWords(eye), em, weight: 'regular', ink: 'muted' },
    { x: frame.axis, y: frame.bottom - tall - 0.45 * em },
    'middle',
  )
  drawBody(board, format, frame, wall)
  const levels = [...heights].map(([text, z]): Level => {
    const xs = rows
      .filter(({ row }) => setOut(row.height) === text)
      .flatMap(({ row }) => seenHoles(wall, row, eye))
      .flatMap(({ outline }) => outline.map(({ x }) => x))
    return { text, y: frame.bottom - z * scale, x: frame.axis + Math.min(0, ...xs) * scale }
  })
  levelsBeside(board, format, levels, {
    x: frame.axis - width / 2,
    datum: frame.bottom,
    room: { top: frame.bottom - tall, bottom: frame.bottom + BELOW * em },
  })
  drawHoles(board, format, frame, elevation, eye)
  heightBeside(board, format, heightText, {
    top: frame.bottom - height,
    bottom: frame.bottom,
    x: frame.axis + width / 2,
  })
  if (!elevation.width) return
  widthUnder(board, format, widthText, {
    left: frame.axis - wall.radius.bottom * scale,
    right: frame.axis + wall.radius.bottom * scale,
    y: frame.bottom,
  })
}
