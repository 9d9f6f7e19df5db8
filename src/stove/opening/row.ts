import type { Degrees, Metres } from '#basis/units.ts'
import type { RowOpening, WallHole } from '#stove/model.ts'

/** One drilled place of a row, as it lies on the flat wall. */
export interface RowPosition {
  /** 1-based, from the first bearing, clockwise; left-out positions keep their number. */
  readonly position: number
  /** From 0 up to 360 [deg]. */
  readonly bearing: Degrees
  /** Arc from the part's front mark, clockwise seen from above [m]. */
  readonly along: Metres
  /** Middle of the opening above the part's bottom edge [m]. */
  readonly height: Metres
}

/** Brings a bearing into 0 ≤ bearing < 360 [deg]. */
export const wrapBearing = (bearing: number): Degrees => {
  const wrapped = ((bearing % 360) + 360) % 360
  // A tiny negative bearing rounds up to 360 itself.
  return (wrapped === 360 ? 0 : wrapped) as Degrees
}

/** How many openings of the row are really cut [1]. */
export const drilledCount = (row: RowOpening): number => row.count - row.leftOut.length

/**
 * The drilled positions of a row on a wall `circumference` round (its outside, where the maker
 * marks out), in order of position.
 */
export const placeRow = (row: RowOpening, circumference: Metres): readonly RowPosition[] => {
  const leftOut = new Set(row.leftOut)
  const positions: RowPosition[] = []
  for (let position = 1; position <= row.count; position += 1) {
    if (leftOut.has(position)) continue
    const bearing = wrapBearing(row.bearing + ((position - 1) * 360) / row.count)
    positions.push({
      position,
      bearing,
      along: ((bearing / 360) * circumference) as Metres,
      height: row.height,
    })
  }
  return positions
}

/** How far an opening reaches round the wall and along its axis [m]. */
export const wallHoleSize = (hole: WallHole): { readonly round: Metres; readonly axial: Metres } => {
  switch (hole.shape) {
    case 'round':
      return { round: hole.diameter, axial: hole.diameter }
    case 'window':
      return { round: hole.width, axial: hole.height }
    case 'slit':
      return hole.along === 'axis'
        ? { round: hole.width, axial: hole.length }
        : { round: hole.length, axial: hole.width }
  }
}

/**
 * Smallest arc between the middles of two drilled positions that are next to each other; the whole
 * circumference where there is only one [m].
 */
export const closestPitch = (row: RowOpening, circumference: Metres): Metres => {
  const drilled = placeRow(row, circumference).map(({ position }) => position)
  const first = drilled[0]
  if (first === undefined) return circumference
  const steps = drilled.map((position, index) => (drilled[index + 1] ?? first + row.count) - position)
  return ((Math.min(...steps) / row.count) * circumference) as Metres
}
