import type { Point, Shape } from './drawing.ts'

const mapped = (shape: Shape, to: (point: Point) => Point, turn: number): Shape => {
  switch (shape.kind) {
    case 'line':
      return { ...shape, from: to(shape.from), to: to(shape.to) }
    case 'polyline':
      return { ...shape, points: shape.points.map(to) }
    case 'circle':
      return { ...shape, centre: to(shape.centre) }
    case 'arc':
      return { ...shape, centre: to(shape.centre), from: shape.from + turn, to: shape.to + turn }
    case 'text':
      return { ...shape, at: to(shape.at), angle: shape.angle + turn }
  }
}

/** A shape shifted by a distance to the right and up [mm]. */
export const moved = (shape: Shape, x: number, y: number): Shape =>
  mapped(shape, (point) => ({ x: point.x + x, y: point.y + y }), 0)

/** A shape turned about the origin, anticlockwise [deg]. */
export const turned = (shape: Shape, angle: number): Shape => {
  if (angle === 0) return shape
  const [sin, cos] = [Math.sin((angle * Math.PI) / 180), Math.cos((angle * Math.PI) / 180)]
  return mapped(shape, ({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }), angle)
}

/** A shape drawn about the origin, turned and set down at a point [mm, deg]. */
export const setDown = (shape: Shape, { x, y }: Point, turn: number): Shape =>
  moved(turned(shape, turn), x, y)
