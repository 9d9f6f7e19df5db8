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

type TextShape = Extract<Shape, { kind: 'text' }>

/** How far strokes of Source Sans 3 reach over and under a line of text, brackets and Ø included [em]. */
const ASCENT = 0.75
const DESCENT = 0.2

/** The box that a line of text fills; for turned text, the upright box round it. */
const textBox = (shape: TextShape): Box => {
  const width = textWidth(shape.text, shape.size)
  const em = emOf(shape.size)
  const start = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? -width / 2 : -width
  const angle = (shape.angle * Math.PI) / 180
  const turn = (x: number, y: number): Point => ({
    x: shape.at.x + x * Math.cos(angle) - y * Math.sin(angle),
    y: shape.at.y + x * Math.sin(angle) + y * Math.cos(angle),
  })
  const [low, high] = [-DESCENT * em, ASCENT * em]
  return around([turn(start, low), turn(start + width, low), turn(start + width, high), turn(start, high)])
}

/** The upright box round a shape; of an arc, that of its whole circle. */
export const shapeBox = (shape: Shape): Box => {
  switch (shape.kind) {
    case 'line':
      return around([shape.from, shape.to])
    case 'polyline':
      return around(shape.points)
    case 'circle':
    case 'arc':
      return grow(around([shape.centre]), shape.radius)
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
