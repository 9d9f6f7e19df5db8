import { type Box, boxesMeet, circleMeetsBox, shapeBox } from '../box.ts'
import type { Point, Shape } from '../drawing.ts'
import type { Stretch } from './tile.ts'

/** Radius of a registration mark's ring and reach of its cross [mm]. */
const RING = 1.6
const REACH = 3.2

const mark = ({ x, y }: Point): readonly Shape[] => [
  { kind: 'circle', layer: 'dimension', centre: { x, y }, radius: RING },
  { kind: 'line', layer: 'dimension', from: { x: x - REACH, y }, to: { x: x + REACH, y } },
  { kind: 'line', layer: 'dimension', from: { x, y: y - REACH }, to: { x, y: y + REACH } },
]

/** Tells of a box whether a shape is in its way. */
const obstacle = (shape: Shape): ((box: Box) => boolean) | null => {
  if (shape.kind === 'circle') return (box) => circleMeetsBox(shape.centre, shape.radius + 0.5, box)
  if (shape.kind !== 'text' && shape.kind !== 'polyline') return null
  // Measured once, and not anew for every place that is tried.
  const own = shapeBox(shape)
  return (box) => boxesMeet(own, box)
}

/**
 * Two registration marks on the line where pieces meet, one near each end of the stretch that both
 * neighbours show, clear of holes and text if there is such a place. In the drawing's own coordinates, so
 * that they fall on each other when the pieces lie right.
 */
export const registrationMarks = (
  shapes: readonly Shape[],
  { from, to }: Stretch,
  at: (along: number) => Point,
): readonly Shape[] => {
  const obstacles = shapes
    .filter((shape) => shape.layer !== 'paper' && shape.layer !== 'mark')
    .flatMap((shape) => obstacle(shape) ?? [])
  const isFree = ({ x, y }: Point): boolean => {
    const box = { left: x - REACH, right: x + REACH, bottom: y - REACH, top: y + REACH }
    return !obstacles.some((isInTheWay) => isInTheWay(box))
  }
  const places: number[] = []
  for (let along = from + REACH + 1; along <= to - REACH - 1; along += 1) places.push(along)
  if (places.length === 0) places.push((from + to) / 2)
  const free = places.filter((along) => isFree(at(along)))
  const good = free.length >= 2 ? free : places
  return [...new Set([good[0], good.at(-1)])].flatMap((along) => (along === undefined ? [] : mark(at(along))))
}
