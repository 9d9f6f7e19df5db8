import type { Point, Shape } from './drawing.ts'
import { emOf, textWidth } from './lettering/measure.ts'

/** An upright rectangle on a drawing or a sheet [mm]. */
export interface Box {
  readonly left: number
  readonly bottom: number
  readonly right: number
  readonly top: number
}

export const grow = (box: Box, by: number): Box => ({
  left: box.left - by,
  bottom: box.bottom - by,
  right: box.right + by,
  top: box.top + by,
})

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top

export const liesIn = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left &&
  inner.right <= outer.right &&
  inner.bottom >= outer.bottom &&
  inner.top <= outer.top

export const circleMeetsBox = (centre: Point, radius: number, box: Box): boolean => {
  const dx = Math.max(box.left - centre.x, 0, centre.x - box.right)
  const dy = Math.max(box.bottom - centre.y, 0, centre.y - box.top)
  return dx * dx + dy * dy < radius * radius
}

export const around = (points: readonly Point[]): Box => ({
  left: Math.min(...points.map((point) => point.x)),
  bottom: Math.min(...points.map((point) => point.y)),
  right: Math.max(...points.map((point) => point.x)),
  top: Math.max(...points.map((point) => point.y)),
})

export type TextShape = Extract<Shape, { kind: 'text' }>

/** How far strokes of Source Sans 3 reach over and under a line of text, brackets and Ø included [em]. */
const ASCENT = 0.75
const DESCENT = 0.2

/** Text that stands askew fills boxes of about this width, one after the other [mm]. */
const PIECE = 5

/**
 * The upright boxes that a line of text of a known width fills: one, or several along it where it stands askew.
 * `at` is the middle of its base line, `cos` and `sin` those of its angle.
 */
export function* lineBoxes(
  at: Point,
  width: number,
  size: number,
  { cos, sin }: { readonly cos: number; readonly sin: number },
): Generator<Box> {
  const em = emOf(size)
  const [tall, lift] = [(ASCENT + DESCENT) * em, ((ASCENT - DESCENT) / 2) * em]
  const isAskew = Math.abs(sin * cos) > 1e-9
  const count = isAskew ? Math.max(1, Math.ceil(width / PIECE)) : 1
  const piece = width / count
  const halfWide = (piece * Math.abs(cos) + tall * Math.abs(sin)) / 2
  const halfHigh = (piece * Math.abs(sin) + tall * Math.abs(cos)) / 2
  for (let index = 0; index < count; index += 1) {
    const along = (index + 0.5) * piece - width / 2
    const [x, y] = [at.x + along * cos - lift * sin, at.y + along * sin + lift * cos]
    yield { left: x - halfWide, right: x + halfWide, bottom: y - halfHigh, top: y + halfHigh }
  }
}

/** Cosine and sine of a text's angle; straight along and straight up are exactly that. */
export const directionOf = (angle: number): { readonly cos: number; readonly sin: number } =>
  angle === 0
    ? { cos: 1, sin: 0 }
    : angle === 90
      ? { cos: 0, sin: 1 }
      : { cos: Math.cos((angle * Math.PI) / 180), sin: Math.sin((angle * Math.PI) / 180) }

/** The upright boxes that a line of text fills. */
const textBoxes = (shape: TextShape): readonly Box[] => {
  const width = textWidth(shape.text, shape.size)
  const way = directionOf(shape.angle)
  const aside = shape.anchor === 'start' ? width / 2 : shape.anchor === 'middle' ? 0 : -width / 2
  const middle = { x: shape.at.x + aside * way.cos, y: shape.at.y + aside * way.sin }
  return [...lineBoxes(middle, width, shape.size, way)]
}

/** The box round a line of text. */
const textBox = (shape: TextShape): Box =>
  around(
    textBoxes(shape).flatMap(({ left, right, bottom, top }) => [
      { x: left, y: bottom },
      { x: right, y: top },
    ]),
  )

/** The upright box round an arc: its ends, and each of the four sides of its circle that it passes. */
const arcBox = ({ centre, radius, from, to }: Extract<Shape, { kind: 'arc' }>): Box => {
  const at = (angle: number): Point => ({
    x: centre.x + radius * Math.cos((angle * Math.PI) / 180),
    y: centre.y + radius * Math.sin((angle * Math.PI) / 180),
  })
  const sides: Point[] = []
  for (let angle = Math.ceil(from / 90) * 90; angle <= to; angle += 90) sides.push(at(angle))
  return around([at(from), at(to), ...sides])
}

/** The upright box round a shape. */
export const shapeBox = (shape: Shape): Box => {
  switch (shape.kind) {
    case 'line':
      return around([shape.from, shape.to])
    case 'polyline':
      return around(shape.points)
    case 'circle':
      return grow(around([shape.centre]), shape.radius)
    case 'arc':
      return arcBox(shape)
    case 'text':
      return textBox(shape)
  }
}

/** The upright box round several shapes. */
export const boxRound = (shapes: readonly Shape[]): Box => {
  const boxes = shapes.map(shapeBox)
  return around(
    boxes.flatMap(({ left, right, bottom, top }) => [
      { x: left, y: bottom },
      { x: right, y: top },
    ]),
  )
}
