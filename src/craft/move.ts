import type { Point, Shape } from './drawing.ts'

/** A shape shifted by a distance to the right and up [mm]. */
export const moved = (shape: Shape, x: number, y: number): Shape => {
  const shift = (point: Point): Point => ({ x: point.x + x, y: point.y + y })
  switch (shape.kind) {
    case 'line':
      return { ...shape, from: shift(shape.from), to: shift(shape.to) }
    case 'polyline':
      return { ...shape, points: shape.points.map(shift) }
    case 'circle':
    case 'arc':
      return { ...shape, centre: shift(shape.centre) }
    case 'text':
      return { ...shape, at: shift(shape.at) }
  }
}
