import type { Metres } from '#basis/units.ts'
import type { PolarPoint } from '#stove/model.ts'
import { wrapBearing } from './row.ts'

/**
 * Where the holes of a floor pattern go. Radii from the middle of the disc in metres, bearings
 * clockwise from the part's front mark. `fillRadius` is the largest radius a hole's *middle* may have.
 */

const point = (radius: number, bearing: number): PolarPoint => ({
  radius: radius as Metres,
  bearing: wrapBearing(bearing),
})

export interface HoleRing {
  readonly radius: Metres
  readonly count: number
  /** Bearing of the first hole [deg]. */
  readonly bearing: number
}

/** Equal holes on concentric rings, with or without one in the middle. */
export const ringsLayout = (rings: readonly HoleRing[], centre: boolean): readonly PolarPoint[] => [
  ...(centre ? [point(0, 0)] : []),
  ...rings.flatMap((ring) =>
    Array.from({ length: ring.count }, (_, index) =>
      point(ring.radius, ring.bearing + (360 * index) / ring.count),
    ),
  ),
]

interface GridPoint {
  /** Squared distance from the middle in pitches, a whole number for this grid. */
  readonly norm: number
  readonly bearing: number
}

/**
 * The hexagonal grid about one of its points, out to `reach` pitches, nearest first, then by bearing.
 * A step of i along one axis and j along the axis 60° further has the squared length i² + ij + j²
 * (cosine rule).
 */
const hexagonalGrid = (reach: number): readonly GridPoint[] => {
  // A row of the grid lies √3/2 pitches from the next, so this many steps cover the circle.
  const steps = Math.ceil((2 * reach) / Math.sqrt(3))
  const grid: GridPoint[] = []
  for (let i = -steps; i <= steps; i += 1) {
    for (let j = -steps; j <= steps; j += 1) {
      const norm = i * i + i * j + j * j
      if (norm > reach * reach) continue
      const bearing = (Math.atan2((Math.sqrt(3) / 2) * j, i + j / 2) * 180) / Math.PI
      grid.push({ norm, bearing: wrapBearing(bearing) })
    }
  }
  return grid.sort((a, b) => a.norm - b.norm || a.bearing - b.bearing)
}

/** All points of a hexagonal grid of the given pitch that lie within `fillRadius`, one in the middle. */
export const hexagonalByPitch = (pitch: Metres, fillRadius: Metres): readonly PolarPoint[] => {
  // A ring that the maker's figures put exactly on the edge must not fall to rounding.
  const reach = (fillRadius / pitch) * (1 + 1e-12)
  return hexagonalGrid(reach).map(({ norm, bearing }) => point(Math.sqrt(norm) * pitch, bearing))
}

/**
 * The counts up to `limit` that fill whole rings of the grid: 1, 7, 13, 19, 31, 37, … Any other
 * count would leave a ring with gaps.
 */
export const hexagonalCounts = (limit: number): readonly number[] => {
  // A circle of radius ρ pitches holds about π ρ² / (√3/2) points.
  const grid = hexagonalGrid(Math.ceil(Math.sqrt((limit * Math.sqrt(3)) / (2 * Math.PI))) + 1)
  return grid.flatMap(({ norm }, index) => {
    const count = index + 1
    return count <= limit && grid[count]?.norm !== norm ? [count] : []
  })
}

/**
 * The widest hexagonal grid with exactly `count` points within `fillRadius`, or null where no whole
 * rings make that count.
 */
export const hexagonalByCount = (count: number, fillRadius: Metres): readonly PolarPoint[] | null => {
  if (count < 2 || !hexagonalCounts(count).includes(count)) return null
  const grid = hexagonalGrid(Math.ceil(Math.sqrt((count * Math.sqrt(3)) / (2 * Math.PI))) + 1).slice(0, count)
  const pitch = fillRadius / Math.sqrt(grid.at(-1)?.norm ?? 1)
  return grid.map(({ norm, bearing }) => point(Math.sqrt(norm) * pitch, bearing))
}

/** 360°/φ² = 180° (3 − √5), 137.508° [deg]. */
const GOLDEN_ANGLE = 180 * (3 - Math.sqrt(5))

/**
 * Smallest distance between any two points of Vogel's spiral in units of its scale: that between the
 * first and the fourth, √(1 + 4 − 4 cos 3γ) by the cosine rule, 1.602 [1].
 */
const CLOSEST_IN_SUNFLOWER = Math.sqrt(5 - 4 * Math.cos((3 * GOLDEN_ANGLE * Math.PI) / 180))

/**
 * Vogel's spiral: hole n at r = c √n, bearing n times the golden angle, which gives every hole the
 * same area of disc, πc² [bib:vogel1979] (read as others retell it; the paper was not at hand).
 */
const sunflower = (count: number, scale: number): readonly PolarPoint[] =>
  Array.from({ length: count }, (_, index) => point(scale * Math.sqrt(index + 1), (index + 1) * GOLDEN_ANGLE))

/** `count` holes, the last one at `fillRadius`. */
export const sunflowerByCount = (count: number, fillRadius: Metres): readonly PolarPoint[] =>
  sunflower(count, fillRadius / Math.sqrt(count))

/** How many holes of a sunflower with the given smallest pitch lie within `fillRadius` [1]. */
const sunflowerCount = (pitch: Metres, fillRadius: Metres): number => {
  const scale = pitch / CLOSEST_IN_SUNFLOWER
  return Math.floor((fillRadius / scale) ** 2 * (1 + 1e-12))
}

/** As many holes as lie within `fillRadius` with no two middles closer than `pitch`. */
export const sunflowerByPitch = (pitch: Metres, fillRadius: Metres): readonly PolarPoint[] =>
  sunflower(sunflowerCount(pitch, fillRadius), pitch / CLOSEST_IN_SUNFLOWER)

/** Smallest distance between two of the points; infinite for fewer than two [m]. */
export const closestHoles = (holes: readonly PolarPoint[]): Metres => {
  const flat = holes
    .map(({ radius, bearing }) => {
      const angle = (bearing * Math.PI) / 180
      return { x: radius * Math.sin(angle), y: radius * Math.cos(angle) }
    })
    .sort((a, b) => a.x - b.x)
  let closest = Number.POSITIVE_INFINITY
  for (const [index, a] of flat.entries()) {
    // From west to east: what lies further east than the closest pair so far need not be looked at.
    for (let next = index + 1; next < flat.length; next += 1) {
      const b = flat[next] as (typeof flat)[number]
      if (b.x - a.x >= closest) break
      closest = Math.min(closest, Math.hypot(a.x - b.x, a.y - b.y))
    }
  }
  return closest as Metres
}
