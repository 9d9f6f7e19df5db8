import { toMillimetres, toRadians } from '#basis/units.ts'
import type { Opening, VanesOpening } from '#stove/model.ts'
import { type ProfileRing, ringVolume } from './profile.ts'
import { KERF } from './vanes.ts'
import { openAngleAt, type WallCut } from './wallCut.ts'

/** Points of the rule below: more than enough for a hole, and its crossings with others. */
const POINTS = 64

/**
 * ∫ f over an interval at whose ends f may start like a square root, as the width of a round hole does. With
 * z = middle − half · cos(φ) what is integrated over φ is smooth and periodic, and the midpoint rule converges fast.
 */
const integral = (from: number, to: number, f: (z: number) => number): number => {
  const [middle, half] = [(from + to) / 2, (to - from) / 2]
  let sum = 0
  for (let point = 0; point < POINTS; point += 1) {
    const phi = (Math.PI * (point + 0.5)) / POINTS
    sum += Math.sin(phi) * f(middle - half * Math.cos(phi))
  }
  return (sum * half * Math.PI) / POINTS
}

/** Tin that openings in a wall take out of rings beyond this radius [mm³]. */
export const wallCutVolume = (
  rings: readonly ProfileRing[],
  cuts: readonly WallCut[],
  beyond: number,
): number => {
  let volume = 0
  for (const ring of rings) {
    const { inner, outer, from, to, drawnIn = [0, 0] } = ring
    if (outer <= beyond) continue
    const marks = cuts.flatMap(({ bottom, top }) => [bottom, top]).filter((z) => z > from && z < to)
    const breaks = [from, ...marks, to].sort((a, b) => a - b)
    for (let index = 1; index < breaks.length; index += 1) {
      const [low, high] = [breaks[index - 1] as number, breaks[index] as number]
      if (high - low < 1e-9) continue
      volume += integral(low, high, (z) => {
        const shift = drawnIn[0] + ((drawnIn[1] - drawnIn[0]) * (z - from)) / (to - from)
        const near = Math.max(inner - shift, beyond)
        const far = outer - shift
        const middle = (near + far) / 2
        return openAngleAt(cuts, z, middle) * middle * (far - near)
      })
    }
  }
  return volume
}

interface Circle {
  readonly x: number
  readonly y: number
  readonly radius: number
}

/** The arcs of a circle that lie in none of the others, as intervals of its angle [rad]. */
const freeArcs = (circle: Circle, others: readonly Circle[]): readonly [number, number][] => {
  const turn = 2 * Math.PI
  const covered: [number, number][] = []
  for (const other of others) {
    const [dx, dy] = [other.x - circle.x, other.y - circle.y]
    const distance = Math.hypot(dx, dy)
    if (distance >= circle.radius + other.radius || distance + other.radius <= circle.radius) continue
    if (distance + circle.radius <= other.radius) return []
    const cosine = (distance ** 2 + circle.radius ** 2 - other.radius ** 2) / (2 * distance * circle.radius)
    const half = Math.acos(Math.max(-1, Math.min(1, cosine)))
    const from = (((Math.atan2(dy, dx) - half) % turn) + turn) % turn
    if (from + 2 * half > turn) covered.push([from, turn], [0, from + 2 * half - turn])
    else covered.push([from, from + 2 * half])
  }
  covered.sort((a, b) => a[0] - b[0])
  const free: [number, number][] = []
  let reached = 0
  for (const [from, to] of covered) {
    if (from > reached) free.push([reached, from])
    reached = Math.max(reached, to)
  }
  if (reached < turn) free.push([reached, turn])
  return free
}

/** Area that circles cover together, by Green's theorem along the arcs that are outside [mm²]. */
export const coveredArea = (circles: readonly Circle[]): number => {
  // Of two that are the same only the first counts.
  const distinct = circles.filter(
    (one, index) =>
      circles.findIndex(
        (other) => Math.hypot(one.x - other.x, one.y - other.y, one.radius - other.radius) < 1e-9,
      ) === index,
  )
  let twice = 0
  for (const circle of distinct)
    for (const [from, to] of freeArcs(
      circle,
      distinct.filter((other) => other !== circle),
    ))
      twice +=
        circle.radius *
        (circle.radius * (to - from) +
          circle.x * (Math.sin(to) - Math.sin(from)) -
          circle.y * (Math.cos(to) - Math.cos(from)))
  return twice / 2
}

/** Round holes of one flat face [mm]. */
export const faceCircles = (openings: readonly Opening[]): readonly Circle[] =>
  openings.flatMap((opening): readonly Circle[] => {
    if (opening.kind === 'bore') return [{ x: 0, y: 0, radius: toMillimetres(opening.diameter) / 2 }]
    if (opening.kind !== 'pattern') return []
    return opening.holes.map(({ radius, bearing }) => ({
      x: toMillimetres(radius) * Math.sin(toRadians(bearing)),
      y: toMillimetres(radius) * Math.cos(toRadians(bearing)),
      radius: toMillimetres(opening.diameter) / 2,
    }))
  })

/**
 * Tin that bending vanes takes away, by volume [mm³]: three narrow cuts, and the corner that both sides of a bend share,
 * t² tan(θ/2) in cross-section (two right-angled triangles with the sides t and t tan(θ/2)).
 */
export const vanesLoss = (vanes: VanesOpening, tin: number): number => {
  if (vanes.angle === 0) return 0
  const width = toMillimetres(vanes.width)
  const length = toMillimetres(vanes.outerRadius) - toMillimetres(vanes.innerRadius)
  const tongue =
    (length - 2 * KERF) * ((width - KERF) * tin - tin ** 2 * Math.tan(toRadians(vanes.angle) / 2))
  return vanes.count * (length * width * tin - tongue)
}

/** All rings together [mm³]. */
export const profileVolume = (rings: readonly ProfileRing[]): number =>
  rings.reduce((sum, ring) => sum + ringVolume(ring), 0)
