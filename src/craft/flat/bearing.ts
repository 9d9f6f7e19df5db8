import type { Degrees } from '#basis/units.ts'
import { wrapBearing } from '#stove/opening/row.ts'

/**
 * A can's wall rolled out flat, seen from outside. Bearings run clockwise seen from above, so to
 * someone who faces the wall they run from right to left: a wrap with bearings that ran the other way
 * would be the mirror image of the stove.
 */
export interface Unrolled {
  /** Bearing where the two ends meet [deg]. */
  readonly join: Degrees
  /** All the way round [mm]. */
  readonly length: number
}

/** Distance of a bearing from the left end, from 0 up to the length [mm]. */
export const alongStrip = ({ join, length }: Unrolled, bearing: number): number =>
  (wrapBearing(join - bearing) / 360) * length
