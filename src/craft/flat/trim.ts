import type { Point, Shape } from '../drawing.ts'

/** The part of a segment on one side of the upright line at `x`; nothing if it lies wholly on the other. */
const trimSegment = (
  from: Point,
  to: Point,
  x: number,
  keep: 'left' | 'right',
): readonly [Point, Point] | null => {
  const side = keep === 'right' ? 1 : -1
  const [a, b] = [(from.x - x) * side, (to.x - x) * side]
  if (a < 0 && b < 0) return null
  const crossing = (): Point => ({ x, y: from.y + ((to.y - from.y) * a) / (a - b) })
  return [a < 0 ? crossing() : from, b < 0 ? crossing() : to]
}

const DEGREES = 180 / Math.PI

/**
 * What is left of an outline when the paper ends at the upright line at `x`: a hole that runs over the
 * end of a wrap shows there as a part of its outline. Text is not trimmed.
 */
export const trimAt = (shape: Shape, x: number, keep: 'left' | 'right'): readonly Shape[] => {
  switch (shape.kind) {
    case 'text':
      return [shape]
    case 'circle':
    case 'arc': {
      const { layer, centre, radius } = shape
      const offset = keep === 'right' ? x - centre.x : centre.x - x
      if (offset <= -radius) return [shape]
      if (offset >= radius) return []
      const half = Math.acos(offset / radius) * DEGREES
      const middle = keep === 'right' ? 0 : 180
      const kept = { from: middle - half, to: middle + half }
      if (shape.kind === 'circle') return [{ kind: 'arc', layer, centre, radius, ...kept }]
      return [-360, 0, 360].flatMap((turn): readonly Shape[] => {
        const from = Math.max(shape.from, kept.from + turn)
        const to = Math.min(shape.to, kept.to + turn)
        return from < to ? [{ ...shape, from, to }] : []
      })
    }
    case 'line': {
      const rest = trimSegment(shape.from, shape.to, x, keep)
      return rest === null ? [] : [{ ...shape, from: rest[0], to: rest[1] }]
    }
    case 'polyline': {
      const side = keep === 'right' ? 1 : -1
      if (shape.points.every((point) => (point.x - x) * side >= 0)) return [shape]
      const ends = shape.closed ? [...shape.points, ...shape.points.slice(0, 1)] : shape.points
      return ends.slice(1).flatMap((to, index): readonly Shape[] => {
        const rest = trimSegment(ends[index] as Point, to, x, keep)
        return rest === null ? [] : [{ kind: 'line', layer: shape.layer, from: rest[0], to: rest[1] }]
      })
    }
  }
}
