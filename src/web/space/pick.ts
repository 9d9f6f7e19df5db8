import type { OpeningOutline } from './scene.ts'

type Point3 = readonly [x: number, y: number, z: number]

/** The rim of one hole as a line round it [mm]. */
export interface Rim {
  readonly part: string
  readonly opening: string
  /** Three numbers a point. */
  readonly points: Float32Array
  readonly middle: Point3
}

const rimOf = (part: string, opening: string, lines: Float32Array, from: number, to: number): Rim => {
  const count = (to - from) / 6
  const points = new Float32Array(3 * count)
  const sum = [0, 0, 0]
  for (let i = 0; i < count; i += 1)
    for (let c = 0; c < 3; c += 1) {
      const value = lines[from + 6 * i + c] ?? 0
      points[3 * i + c] = value
      sum[c] = (sum[c] ?? 0) + value / count
    }
  return { part, opening, points, middle: sum as unknown as Point3 }
}

/** Outlines taken apart into holes: where a line does not go on from where the last one ended, another hole begins. */
export const rimsOf = (outlines: readonly OpeningOutline[]): readonly Rim[] =>
  outlines.flatMap(({ part, opening, lines }) => {
    const rims: Rim[] = []
    let from = 0
    for (let at = 6; at <= lines.length; at += 6) {
      const goesOn =
        at < lines.length && [0, 1, 2].every((c) => Math.abs(lines[at + c]! - lines[at - 3 + c]!) < 1e-3)
      if (goesOn) continue
      rims.push(rimOf(part, opening, lines, from, at))
      from = at
    }
    return rims
  })

/** Where a point of space is seen [px]; null: behind whoever looks. */
export type Project = (x: number, y: number, z: number) => { readonly x: number; readonly y: number } | null

/** How far a place of the picture is from a hole as it is seen, nothing within it [px]; null: the hole is not seen whole. */
const farFrom = (
  { points }: Rim,
  project: Project,
  at: { readonly x: number; readonly y: number },
): number | null => {
  const count = points.length / 3
  const seen: { readonly x: number; readonly y: number }[] = []
  for (let i = 0; i < count; i += 1) {
    const point = project(points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!)
    if (point === null) return null
    seen.push(point)
  }
  let within = false
  let least = Number.POSITIVE_INFINITY
  for (const [i, b] of seen.entries()) {
    const a = seen.at(i - 1) ?? b
    if (a.y > at.y !== b.y > at.y && at.x < a.x + ((at.y - a.y) / (b.y - a.y)) * (b.x - a.x)) within = !within
    const [dx, dy] = [b.x - a.x, b.y - a.y]
    const long = dx * dx + dy * dy
    const share = long === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - a.x) * dx + (at.y - a.y) * dy) / long))
    least = Math.min(least, Math.hypot(at.x - a.x - share * dx, at.y - a.y - share * dy))
  }
  return within ? 0 : least
}

/**
 * How far it is along a ray to the first of some triangles, three corners of three numbers each [length of `along`];
 * infinite where there is none. Moeller and Trumbore's test, from memory.
 */
export const firstHit = (triangles: Float32Array, from: Point3, along: Point3): number => {
  const [ox, oy, oz] = from
  const [dx, dy, dz] = along
  let nearest = Number.POSITIVE_INFINITY
  for (let t = 0; t < triangles.length; t += 9) {
    const ax = triangles[t]!
    const ay = triangles[t + 1]!
    const az = triangles[t + 2]!
    const ux = triangles[t + 3]! - ax
    const uy = triangles[t + 4]! - ay
    const uz = triangles[t + 5]! - az
    const vx = triangles[t + 6]! - ax
    const vy = triangles[t + 7]! - ay
    const vz = triangles[t + 8]! - az
    const px = dy * vz - dz * vy
    const py = dz * vx - dx * vz
    const pz = dx * vy - dy * vx
    const facing = ux * px + uy * py + uz * pz
    if (facing === 0) continue
    const sx = ox - ax
    const sy = oy - ay
    const sz = oz - az
    const u = (sx * px + sy * py + sz * pz) / facing
    if (u < 0 || u > 1) continue
    const qx = sy * uz - sz * uy
    const qy = sz * ux - sx * uz
    const qz = sx * uy - sy * ux
    const v = (dx * qx + dy * qy + dz * qz) / facing
    if (v < 0 || u + v > 1) continue
    const share = (vx * qx + vy * qy + vz * qz) / facing
    if (share > 0 && share < nearest) nearest = share
  }
  return nearest
}

export interface Look {
  readonly eye: Point3
  readonly project: Project
  /** All tin and fuel that may hide a hole. */
  readonly solids: readonly Float32Array[]
}

/** Tin that lies this much before the middle of a hole hides it: its own wall does not [mm]. */
const BEFORE = 2

const awayFrom = (eye: Point3, { middle }: Rim): number =>
  Math.hypot(middle[0] - eye[0], middle[1] - eye[1], middle[2] - eye[2])

const isHidden = ({ eye, solids }: Look, rim: Rim): boolean => {
  const { middle } = rim
  const along: Point3 = [middle[0] - eye[0], middle[1] - eye[1], middle[2] - eye[2]]
  const upTo = 1 - BEFORE / Math.max(awayFrom(eye, rim), BEFORE)
  return solids.some((triangles) => firstHit(triangles, eye, along) < upTo)
}

/**
 * The opening that a press in the picture means: that of the hole it lies in, or of the nearest one within `slack` [px].
 * Of several the one in front; never one that is hidden behind tin.
 */
export const openingAt = (
  rims: readonly Rim[],
  look: Look,
  at: { readonly x: number; readonly y: number },
  slack: number,
): Rim | null =>
  rims
    .flatMap((rim) => {
      const far = farFrom(rim, look.project, at)
      return far === null || far > slack ? [] : [{ rim, far, away: awayFrom(look.eye, rim) }]
    })
    .sort((a, b) => a.far - b.far || a.away - b.away)
    .find(({ rim }) => !isHidden(look, rim))?.rim ?? null
