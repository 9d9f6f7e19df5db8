import type { Degrees } from '#basis/units.ts'
import { wrapBearing } from '#stove/opening/row.ts'

/** What must not be cut in two: a stretch of wall, the middle's bearing and half its width [deg]. */
export interface Span {
  readonly bearing: number
  readonly half: number
}

/** Smaller angle between two bearings [deg]. */
const apart = (a: number, b: number): number => {
  const turn = wrapBearing(a - b)
  return Math.min(turn, 360 - turn)
}

/** Step of the search round the can [deg]. */
const STEP = 0.5

/**
 * Where the ends of a wrap should meet [deg]: at the preferred bearing where that cuts nothing, else as
 * near to it as nothing is cut, in the middle of the gap it finds; where rows overlap all round, where
 * the least is cut.
 */
export const chooseJoin = (spans: readonly Span[], preferred: number): Degrees => {
  const depth = (bearing: number): number =>
    spans.reduce((sum, span) => sum + Math.max(0, span.half - apart(bearing, span.bearing)), 0)
  if (depth(preferred) === 0) return wrapBearing(preferred)

  const around = Array.from({ length: 360 / STEP }, (_, index) => index * STEP)
  const least = Math.min(...around.map(depth))
  const isBest = (bearing: number): boolean => depth(bearing) <= least + 1e-9
  const nearest = around
    .filter(isBest)
    .reduce((best, bearing) => (apart(bearing, preferred) < apart(best, preferred) - 1e-9 ? bearing : best))

  let [low, high] = [nearest, nearest]
  while (nearest - low < 180 && isBest(low - STEP)) low -= STEP
  while (high - nearest < 180 && isBest(high + STEP)) high += STEP
  return wrapBearing((low + high) / 2)
}
