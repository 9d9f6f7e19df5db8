import type { Metres } from '#basis/units.ts'
import type { Opening, VanesOpening } from '#stove/model.ts'

/** A point of a flat face seen from above, x to the part's right, y to its front mark [m]. */
interface FacePoint {
  readonly x: number
  readonly y: number
}

/**
 * What is cut out of a flat face: a round hole, or the window of one vane before it is bent, its
 * corners in order.
 */
export type FaceOutline =
  | { readonly kind: 'circle'; readonly centre: FacePoint; readonly radius: number }
  | { readonly kind: 'tongue'; readonly corners: readonly FacePoint[] }

const polar = (radius: number, bearing: number): FacePoint => {
  const angle = (bearing * Math.PI) / 180
  return { x: radius * Math.sin(angle), y: radius * Math.cos(angle) }
}

/** A vane is a rectangle with its hinge on a radius; it lies on the side the gas is turned to. */
const tongues = (vanes: VanesOpening): readonly FaceOutline[] =>
  Array.from({ length: vanes.count }, (_, index) => {
    const bearing = vanes.bearing + (360 * index) / vanes.count
    const side = polar(vanes.width, bearing + (vanes.hand === 'clockwise' ? 90 : -90))
    const inner = polar(vanes.innerRadius, bearing)
    const outer = polar(vanes.outerRadius, bearing)
    return {
      kind: 'tongue',
      corners: [
        inner,
        outer,
        { x: outer.x + side.x, y: outer.y + side.y },
        { x: inner.x + side.x, y: inner.y + side.y },
      ],
    }
  })

/** What an opening cuts out of its face; nothing for a row, which lies in a wall. */
export const faceOutlines = (opening: Opening): readonly FaceOutline[] => {
  switch (opening.kind) {
    case 'row':
      return []
    case 'bore':
      return [{ kind: 'circle', centre: { x: 0, y: 0 }, radius: opening.diameter / 2 }]
    case 'pattern':
      return opening.holes.map(({ radius, bearing }) => ({
        kind: 'circle',
        centre: polar(radius, bearing),
        radius: opening.diameter / 2,
      }))
    case 'vanes':
      return tongues(opening)
  }
}

const sides = (corners: readonly FacePoint[]): readonly (readonly [FacePoint, FacePoint])[] =>
  corners.map((corner, index) => [corner, corners[(index + 1) % corners.length] ?? corner] as const)

const distanceToSegment = (point: FacePoint, [from, to]: readonly [FacePoint, FacePoint]): number => {
  const run = { x: to.x - from.x, y: to.y - from.y }
  const square = run.x ** 2 + run.y ** 2
  const along = square === 0 ? 0 : ((point.x - from.x) * run.x + (point.y - from.y) * run.y) / square
  const clipped = Math.min(1, Math.max(0, along))
  return Math.hypot(point.x - from.x - clipped * run.x, point.y - from.y - clipped * run.y)
}

const turnOf = (from: FacePoint, to: FacePoint, point: FacePoint): number =>
  (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x)

const inside = (point: FacePoint, corners: readonly FacePoint[]): boolean => {
  const turns = sides(corners).map(([from, to]) => turnOf(from, to, point))
  return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0)
}

/** Distance of a point from a tongue, negative inside it [m]. */
const distanceToTongue = (point: FacePoint, corners: readonly FacePoint[]): number => {
  const nearest = Math.min(...sides(corners).map((side) => distanceToSegment(point, side)))
  return inside(point, corners) ? -nearest : nearest
}

const cross = (a: readonly [FacePoint, FacePoint], b: readonly [FacePoint, FacePoint]): boolean =>
  turnOf(a[0], a[1], b[0]) * turnOf(a[0], a[1], b[1]) < 0 &&
  turnOf(b[0], b[1], a[0]) * turnOf(b[0], b[1], a[1]) < 0

/** Disjoint convex figures are closest at a corner of one of them; crossing ones have no gap. */
const betweenTongues = (a: readonly FacePoint[], b: readonly FacePoint[]): number => {
  const corners = Math.min(
    ...a.map((point) => distanceToTongue(point, b)),
    ...b.map((point) => distanceToTongue(point, a)),
  )
  const crossing = sides(a).some((one) => sides(b).some((other) => cross(one, other)))
  return crossing ? Math.min(0, corners) : corners
}

/** Tin left between two outlines of one face; zero or less where they run into each other [m]. */
export const tinBetweenOnFace = (a: FaceOutline, b: FaceOutline): Metres => {
  if (a.kind === 'circle' && b.kind === 'circle')
    return (Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y) - a.radius - b.radius) as Metres
  if (a.kind === 'circle' && b.kind === 'tongue')
    return (distanceToTongue(a.centre, b.corners) - a.radius) as Metres
  if (a.kind === 'tongue' && b.kind === 'circle')
    return (distanceToTongue(b.centre, a.corners) - b.radius) as Metres
  if (a.kind === 'tongue' && b.kind === 'tongue') return betweenTongues(a.corners, b.corners) as Metres
  return Number.POSITIVE_INFINITY as Metres
}

/** How far an outline reaches from the middle of its face [m]. */
export const outerReach = (outline: FaceOutline): Metres =>
  (outline.kind === 'circle'
    ? Math.hypot(outline.centre.x, outline.centre.y) + outline.radius
    : Math.max(...outline.corners.map(({ x, y }) => Math.hypot(x, y)))) as Metres

/** How near an outline comes to the middle of its face; 0 where it lies over the middle [m]. */
export const innerReach = (outline: FaceOutline): Metres =>
  (outline.kind === 'circle'
    ? Math.max(0, Math.hypot(outline.centre.x, outline.centre.y) - outline.radius)
    : Math.max(0, distanceToTongue({ x: 0, y: 0 }, outline.corners))) as Metres

/** The least tin between two outlines of a list; infinite for fewer than two [m]. */
export const closestOnFace = (outlines: readonly FaceOutline[]): Metres => {
  let least = Number.POSITIVE_INFINITY
  for (const [index, first] of outlines.entries())
    for (const second of outlines.slice(index + 1)) least = Math.min(least, tinBetweenOnFace(first, second))
  return least as Metres
}

/** The least tin between an outline of one list and one of the other; infinite where one is empty [m]. */
export const closestBetweenFaces = (some: readonly FaceOutline[], others: readonly FaceOutline[]): Metres => {
  let least = Number.POSITIVE_INFINITY
  for (const first of some)
    for (const second of others) least = Math.min(least, tinBetweenOnFace(first, second))
  return least as Metres
}
