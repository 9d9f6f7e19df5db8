import type { Metres } from '#basis/units.ts'
import type { RowOpening, WallHole } from '#stove/model.ts'
import { placeRow, wallHoleSize } from '#stove/opening/row.ts'

/**
 * All points within `rounding` of an upright box on the unrolled wall: a round hole is a box without
 * extent, a square window a box without rounding. `x` runs round the can from its front mark along
 * the outside of the body, `y` up from the part's bottom edge. Metres.
 *
 * The wall is taken flat, as it is marked out. A bit that goes straight into a curved wall cuts a
 * little wider round the can, by (arcsin k)/k for k = bit over can diameter: 1.1 % at a quarter.
 */
export interface RoundedBox {
  readonly x: number
  readonly y: number
  readonly halfWidth: number
  readonly halfHeight: number
  readonly rounding: number
}

/** One drilled or cut opening of a row, where it lies on the unrolled wall. */
export interface WallOutline {
  readonly opening: string
  readonly row: RowOpening
  /** Which of the row's positions, 1-based, left-out ones counted. */
  readonly position: number
  readonly bearing: number
  /** Together they are the opening: two for a window with a round foot, else one. */
  readonly pieces: readonly RoundedBox[]
}

const piecesAt = (hole: WallHole, x: number, y: number): readonly RoundedBox[] => {
  const { round, axial } = wallHoleSize(hole)
  if (hole.shape === 'round') return [{ x, y, halfWidth: 0, halfHeight: 0, rounding: hole.diameter / 2 }]
  if (hole.shape === 'window' && hole.foot === 'round') {
    const radius = hole.width / 2
    const straight = hole.height - radius
    return [
      { x, y: y - hole.height / 2 + radius, halfWidth: 0, halfHeight: 0, rounding: radius },
      { x, y: y + radius / 2, halfWidth: radius, halfHeight: straight / 2, rounding: 0 },
    ]
  }
  return [{ x, y, halfWidth: round / 2, halfHeight: axial / 2, rounding: 0 }]
}

/** The openings of a row on a wall of the given circumference, turned by `turned` degrees. */
export const rowOutlines = (
  opening: string,
  row: RowOpening,
  circumference: Metres,
  turned = 0,
): readonly WallOutline[] =>
  placeRow(row, circumference).map(({ position, bearing, along, height }) => ({
    opening,
    row,
    position,
    bearing,
    pieces: piecesAt(row.hole, along + (turned / 360) * circumference, height),
  }))

/** The same outlines, moved up the wall by `rise` and round it by `turned` degrees. */
export const movedOutlines = (
  outlines: readonly WallOutline[],
  circumference: number,
  rise: number,
  turned: number,
): readonly WallOutline[] =>
  outlines.map((outline) => ({
    ...outline,
    pieces: outline.pieces.map((piece) => ({
      ...piece,
      x: piece.x + (turned / 360) * circumference,
      y: piece.y + rise,
    })),
  }))

/** Shortest way from 0 to `distance` round a wall, signed: from −half to +half a turn [m]. */
export const wrappedAlong = (distance: number, circumference: number): number => {
  const turns = distance / circumference
  return (turns - Math.round(turns)) * circumference
}

const boxGap = (a: RoundedBox, b: RoundedBox, circumference: number): number => {
  const across = Math.abs(wrappedAlong(a.x - b.x, circumference)) - a.halfWidth - b.halfWidth
  const upward = Math.abs(a.y - b.y) - a.halfHeight - b.halfHeight
  const apart =
    across > 0 || upward > 0 ? Math.hypot(Math.max(across, 0), Math.max(upward, 0)) : Math.max(across, upward)
  return apart - a.rounding - b.rounding
}

/** Tin left between two openings on one wall; negative where they run into each other [m]. */
const tinBetween = (a: WallOutline, b: WallOutline, circumference: number): Metres => {
  let least = Number.POSITIVE_INFINITY
  for (const one of a.pieces)
    for (const other of b.pieces) least = Math.min(least, boxGap(one, other, circumference))
  return least as Metres
}

/** Two openings and the tin between them [m]. */
export interface Closest {
  readonly gap: Metres
  readonly first: WallOutline
  readonly second: WallOutline
}

/** The two closest openings of one row, also across the front mark; null for a single opening. */
export const closestInRow = (outlines: readonly WallOutline[], circumference: number): Closest | null => {
  let closest: Closest | null = null
  for (const [index, first] of outlines.entries()) {
    const second = outlines[(index + 1) % outlines.length]
    if (second === undefined || second === first) continue
    const gap = tinBetween(first, second, circumference)
    if (closest === null || gap < closest.gap) closest = { gap, first, second }
  }
  return closest
}

/** The closest pair of openings, one from each row; null where a row has none. */
export const closestBetweenRows = (
  some: readonly WallOutline[],
  others: readonly WallOutline[],
  circumference: number,
): Closest | null => {
  let closest: Closest | null = null
  for (const first of some) {
    for (const second of others) {
      const gap = tinBetween(first, second, circumference)
      if (closest === null || gap < closest.gap) closest = { gap, first, second }
    }
  }
  return closest
}

/** Tin between an opening and an upright line at a bearing; negative where the line crosses it [m]. */
export const tinToBearing = (outline: WallOutline, bearing: number, circumference: number): Metres => {
  const at = (bearing / 360) * circumference
  return Math.min(
    ...outline.pieces.map(
      ({ x, halfWidth, rounding }) => Math.abs(wrappedAlong(x - at, circumference)) - halfWidth - rounding,
    ),
  ) as Metres
}
