import type { Millimetres } from '#basis/units.ts'
import { boxRound, grow } from '../../box.ts'
import type { Drawing, Layer, Point, Shape } from '../../drawing.ts'
import { breakLines, emOf, shortened } from '../../lettering/measure.ts'
import { LINE_SPACING } from '../../lettering/room.ts'
import { SMALL_SIZE } from '../../lettering/sizes.ts'
import { moved } from '../../move.ts'
import { spread } from '../../section/spread.ts'

/**
 * A step's picture: what is seen on the left, to one scale, and what is said of it in a column on the right, each line
 * led to its place. All words stand in the column or under the picture, so none can meet a line. Millimetres.
 */
export interface Scene {
  readonly shapes: readonly Shape[]
  readonly labels: readonly SceneLabel[]
  /** Lines under the picture. */
  readonly captions: readonly string[]
}

export interface SceneLabel {
  readonly lines: readonly string[]
  /** Where its leader begins; null for none, then `want` places it. */
  readonly from: Point | null
  readonly want: number
}

/** Of the whole picture: half the text width of an A4 or Letter page [mm]. */
export const PICTURE_WIDTH = 88
/** What is seen is at most this large where words stand beside it [mm]. */
export const FIELD = { width: 46, height: 56 }
const COLUMN_GAP = 5
const EDGE = 1.5
const BETWEEN_LABELS = 1.6
const PITCH = emOf(SMALL_SIZE) * LINE_SPACING
const MOST_LINES = 4

export const line = (layer: Layer, from: Point, to: Point): Shape => ({ kind: 'line', layer, from, to })
export const polyline = (layer: Layer, points: readonly Point[], closed = false): Shape => ({
  kind: 'polyline',
  layer,
  points,
  closed,
})
export const rectangle = (
  layer: Layer,
  { left, right, bottom, top }: { left: number; right: number; bottom: number; top: number },
): Shape =>
  polyline(
    layer,
    [
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top },
    ],
    true,
  )

const text = (words: string, at: Point): Shape => ({
  kind: 'text',
  layer: 'text',
  at,
  text: words,
  size: SMALL_SIZE,
  anchor: 'start',
  angle: 0,
})

const linesIn = (words: readonly string[], width: number): readonly string[] => {
  const lines = words.flatMap((one) => breakLines(one, SMALL_SIZE, width))
  return lines.slice(0, Math.max(MOST_LINES, words.length)).map((one) => shortened(one, SMALL_SIZE, width))
}

/** How many millimetres of the stove one millimetre of the picture shows: never larger than life. */
export const scaleFor = (width: number, height: number, field: typeof FIELD = FIELD): number =>
  Math.min(1, field.width / Math.max(width, 1e-9), field.height / Math.max(height, 1e-9))

/** A point of a leader or dimension: a short slanted tick. */
export const tick = ({ x, y }: Point): Shape =>
  line('dimension', { x: x - 0.7, y: y - 0.7 }, { x: x + 0.7, y: y + 0.7 })

/** A height above a datum, measured beside what is seen: from `low` to `high` at `x`. */
export const upright = (x: number, low: number, high: number): readonly Shape[] => [
  line('dimension', { x, y: low }, { x, y: high }),
  tick({ x, y: low }),
  tick({ x, y: high }),
]

/** Sets the words beside what is seen and draws it all from the lower left corner. */
export const drawScene = (title: string, { shapes, labels, captions }: Scene): Drawing => {
  const seen = boxRound(shapes)
  const columnLeft = seen.right + COLUMN_GAP
  const columnWidth = PICTURE_WIDTH - 2 * EDGE - (columnLeft - seen.left)
  const set = [...labels]
    .sort((a, b) => b.want - a.want)
    .map((label) => ({ ...label, lines: linesIn(label.lines, columnWidth) }))
  const heights = set.map(({ lines }) => lines.length * PITCH)
  const needed = heights.reduce((sum, height) => sum + height + BETWEEN_LABELS, -BETWEEN_LABELS)
  const lower = Math.min(seen.bottom, (seen.bottom + seen.top - needed) / 2)
  const upper = Math.max(seen.top, lower + needed)
  const tops = spread(
    set.map(({ want }, index) => ({ want: upper - want, height: heights[index] ?? 0 })),
    BETWEEN_LABELS,
    0,
    upper - lower,
  )
  const words = set.flatMap(({ lines, from }, index): readonly Shape[] => {
    const top = upper - (tops[index] ?? 0)
    const middle = top - (heights[index] ?? 0) / 2
    return [
      ...(from === null ? [] : [line('dimension', from, { x: columnLeft - 1, y: middle })]),
      ...lines.map((one, row) =>
        text(one, { x: columnLeft, y: top - row * PITCH - PITCH / 2 - SMALL_SIZE / 2 }),
      ),
    ]
  })
  const under = Math.min(lower, seen.bottom) - 2
  const captionLines = captions.flatMap((one) => breakLines(one, SMALL_SIZE, PICTURE_WIDTH - 2 * EDGE))
  const below = captionLines.map((one, row) =>
    text(shortened(one, SMALL_SIZE, PICTURE_WIDTH - 2 * EDGE), {
      x: seen.left,
      y: under - row * PITCH - PITCH / 2 - SMALL_SIZE / 2,
    }),
  )
  const all = [...shapes, ...words, ...below]
  const { left, right, bottom, top } = grow(boxRound(all), EDGE)
  return {
    title,
    width: Math.max(PICTURE_WIDTH, right - left) as Millimetres,
    height: (top - bottom) as Millimetres,
    shapes: all.map((shape) => moved(shape, -left, -bottom)),
    notes: [],
  }
}
