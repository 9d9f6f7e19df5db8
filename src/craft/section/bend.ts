import type { HalfPoint } from './half.ts'

/** The four ways of the half section: out, in, up, down. */
export type Way = 'out' | 'in' | 'up' | 'down'

interface Vector {
  readonly r: number
  readonly z: number
}

const WAYS: Readonly<Record<Way, Vector>> = {
  out: { r: 1, z: 0 },
  in: { r: -1, z: 0 },
  up: { r: 0, z: 1 },
  down: { r: 0, z: -1 },
}

const along = (way: Way): Vector => WAYS[way]

const dot = (a: Vector, b: Vector): number => a.r * b.r + a.z * b.z
const minus = (a: Vector, b: Vector): Vector => ({ r: a.r - b.r, z: a.z - b.z })
const plus = (a: Vector, b: Vector, times = 1): HalfPoint => ({ r: a.r + b.r * times, z: a.z + b.z * times })
const middle = (a: Vector, b: Vector): HalfPoint => ({ r: (a.r + b.r) / 2, z: (a.z + b.z) / 2 })
const wayOf = ({ r, z }: Vector): Way =>
  Math.abs(r) > Math.abs(z) ? (r > 0 ? 'out' : 'in') : z > 0 ? 'up' : 'down'

/** A cross-section where a ribbon begins or ends: its edges lie left and right of the way it flows. */
export interface End {
  readonly left: HalfPoint
  readonly right: HalfPoint
  readonly way: Way
}

/** A cubic Bézier curve; a straight line has its handles on itself. */
export type Cubic = readonly [HalfPoint, HalfPoint, HalfPoint, HalfPoint]

/** One stretch of a ribbon: both edges, in step. */
export interface Stretch {
  readonly left: Cubic
  readonly right: Cubic
}

/** The end of a ribbon `width` wide with its middle at a point. */
export const endAt = (at: HalfPoint, width: number, way: Way): End => {
  const { r, z } = along(way)
  const side = { r: -z, z: r }
  return { left: plus(at, side, width / 2), right: plus(at, side, -width / 2), way }
}

/** Middle of an end. */
export const middleOf = ({ left, right }: End): HalfPoint => middle(left, right)
export const widthOf = ({ left, right }: End): number => Math.hypot(left.r - right.r, left.z - right.z)

const line = (from: HalfPoint, to: HalfPoint): Cubic => [
  from,
  { r: from.r + (to.r - from.r) / 3, z: from.z + (to.z - from.z) / 3 },
  { r: from.r + ((to.r - from.r) * 2) / 3, z: from.z + ((to.z - from.z) * 2) / 3 },
  to,
]

/** Handle of a quarter circle drawn as a cubic, 4/3 (√2 − 1) of its radius [1]. */
const QUARTER = (4 / 3) * (Math.SQRT2 - 1)

const quarter = (from: HalfPoint, way: Way, to: HalfPoint, onto: Way): Cubic => {
  const first = dot(minus(to, from), along(way))
  const then = dot(minus(to, from), along(onto))
  return [from, plus(from, along(way), first * QUARTER), plus(to, along(onto), -then * QUARTER), to]
}

const moved = (end: End, by: number): End => ({
  left: plus(end.left, along(end.way), by),
  right: plus(end.right, along(end.way), by),
  way: end.way,
})

const straight = (from: End, to: End): readonly Stretch[] =>
  Math.hypot(...Object.values(minus(middleOf(to), middleOf(from)))) < 1e-9
    ? []
    : [{ left: line(from.left, to.left), right: line(from.right, to.right) }]

/** A turn is at most this much longer one way than the other, the rest runs straight [1]. */
const ROUNDNESS = 1.7

/** Straight, a quarter turn, straight. */
const turn = (from: End, to: End): readonly Stretch[] => {
  const first = along(from.way)
  const then = along(to.way)
  const ahead = [minus(to.left, from.left), minus(to.right, from.right)]
  const a = Math.max(0, Math.min(...ahead.map((v) => dot(v, first))))
  const b = Math.max(0, Math.min(...ahead.map((v) => dot(v, then))))
  const before = moved(from, a - Math.min(a, ROUNDNESS * b))
  const after = moved(to, -(b - Math.min(b, ROUNDNESS * a)))
  return [
    ...straight(from, before),
    {
      left: quarter(before.left, from.way, after.left, to.way),
      right: quarter(before.right, from.way, after.right, to.way),
    },
    ...straight(after, to),
  ]
}

/** Edges of an S-bend by offsetting the handles of its middle line, so that it keeps its width. */
const sBend = (from: End, to: End): readonly Stretch[] => {
  const way = along(from.way)
  const [p, q] = [middleOf(from), middleOf(to)]
  const reach = dot(minus(q, p), way) / 2
  const c = plus(p, way, reach)
  const d = plus(q, way, -reach)
  const slope = minus(d, c)
  const length = Math.hypot(slope.r, slope.z)
  // Where the middle leg meets the end legs, the offset handle slides by w/2 · tan of half the angle between them.
  const bent = Math.atan2(way.r * slope.z - way.z * slope.r, dot(slope, way))
  const slide = length < 1e-9 ? 0 : Math.tan(bent / 2)
  const edge = (start: HalfPoint, end: HalfPoint, side: number, w: number): Cubic => [
    start,
    plus(start, way, reach - (side * w * slide) / 2),
    plus(end, way, -reach - (side * w * slide) / 2),
    end,
  ]
  return [
    {
      left: edge(from.left, to.left, 1, widthOf(from)),
      right: edge(from.right, to.right, -1, widthOf(to)),
    },
  ]
}

/** An S-bend is at least this much longer than it shifts; otherwise two quarter turns take less room [1]. */
const S_SLOPE = 0.85
/** And at most this much, the rest runs straight. */
const S_STRETCH = 2.4
/** Air that turns back keeps within this reach of the wall it came through, so that it crosses nothing [mm]. */
const TURN_BACK = 9

/**
 * The way of a ribbon from one end to another. `lane` shifts the cross stretch of a double turn along the way it set
 * out, so that ribbons side by side keep beside each other [mm].
 */
export const bend = (from: End, to: End, lane = 0): readonly Stretch[] => {
  const way = along(from.way)
  const shift = minus(middleOf(to), middleOf(from))
  const ahead = dot(shift, way)
  const sideways = plus(shift, way, -ahead)
  const aside = Math.hypot(sideways.r, sideways.z)
  const facing = dot(way, along(to.way))
  const width = (widthOf(from) + widthOf(to)) / 2
  if (Math.abs(facing) < 0.5) return turn(from, to)
  if (facing > 0 && aside < 1e-6) return straight(from, to)
  if (facing > 0 && ahead >= S_SLOPE * aside) {
    const spare = Math.max(0, ahead - S_STRETCH * aside - width) / 2
    const [begin, finish] = [moved(from, spare), moved(to, -spare)]
    return [...straight(from, begin), ...sBend(begin, finish), ...straight(finish, to)]
  }
  // Two quarter turns by a cross stretch.
  const depth =
    facing > 0 ? ahead / 2 + lane : Math.max(0, ahead) + Math.min(aside / 2, TURN_BACK) + width / 2
  const crossing = endAt(plus(plus(middleOf(from), way, depth), sideways, 0.5), width, wayOf(sideways))
  return [...turn(from, crossing), ...turn(crossing, to)]
}

const mix = (a: HalfPoint, b: HalfPoint, t: number): HalfPoint => ({
  r: a.r + (b.r - a.r) * t,
  z: a.z + (b.z - a.z) * t,
})

const pointOn = ([p, c, d, q]: Cubic, t: number): HalfPoint => {
  const [pc, cd, dq] = [mix(p, c, t), mix(c, d, t), mix(d, q, t)]
  return mix(mix(pc, cd, t), mix(cd, dq, t), t)
}

/** A place on a ribbon: middle, direction of flow as an angle from outwards towards up [rad], and width [mm]. */
export interface RibbonPlace {
  readonly at: HalfPoint
  readonly angle: number
  readonly width: number
}

const SAMPLES = 16

/** Middle line of a ribbon in small steps, with the length run so far [mm]. */
const middleLine = (stretches: readonly Stretch[]): readonly (RibbonPlace & { readonly run: number })[] => {
  const places: (RibbonPlace & { run: number })[] = []
  let run = 0
  let last: HalfPoint | null = null
  for (const { left, right } of stretches)
    for (let i = 0; i <= SAMPLES; i += 1) {
      const t = i / SAMPLES
      const [a, b] = [pointOn(left, t), pointOn(right, t)]
      const at = middle(a, b)
      const step: Vector = last === null ? { r: 0, z: 0 } : minus(at, last)
      const length = Math.hypot(step.r, step.z)
      if (last !== null && length < 1e-9) continue
      run += length
      places.push({ at, angle: Math.atan2(step.z, step.r), width: Math.hypot(a.r - b.r, a.z - b.z), run })
      last = at
    }
  return places
}

export const lengthOf = (stretches: readonly Stretch[]): number => middleLine(stretches).at(-1)?.run ?? 0

/** Places along a ribbon at given shares of its length, 0 to 1. */
export const placesAlong = (
  stretches: readonly Stretch[],
  shares: readonly number[],
): readonly RibbonPlace[] => {
  const places = middleLine(stretches)
  const whole = places.at(-1)?.run ?? 0
  return shares.flatMap((share) => {
    const i = places.findIndex(({ run }) => run > 0 && run >= share * whole)
    const [before, after] = [places[i - 1], places[i]]
    if (before === undefined || after === undefined) return []
    const t = (share * whole - before.run) / (after.run - before.run)
    return [
      {
        at: mix(before.at, after.at, t),
        angle: after.angle,
        width: before.width + (after.width - before.width) * t,
      },
    ]
  })
}
