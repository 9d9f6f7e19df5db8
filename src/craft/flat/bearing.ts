import { wrapBearing } from '#stove/opening/row.ts'
import type { Strip } from './strip.ts'

/**
 * Distance of a bearing from the left end of a strip, from 0 up to its length [mm]. The strip is seen from
 * outside. Bearings run clockwise seen from above, so to someone who faces the wall they run from right to
 * left: a wrap with bearings that ran the other way would be the mirror image of the stove.
 */
export const alongStrip = (
  { join, development }: Pick<Strip, 'join' | 'development'>,
  bearing: number,
): number => (wrapBearing(join - bearing) / 360) * development.length
