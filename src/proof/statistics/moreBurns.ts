import { noncentralTCdf } from './special/noncentralT.ts'
import { studentWithin } from './special/studentT.ts'

/** Beyond this nobody burns; the answer is "more than". */
const MOST = 200

/**
 * Burns of one stove until its mean is known to ± `halfWidth`, for burns that spread by `sd`: the least n with
 * t(n−1)·sd/√n ≤ halfWidth. Null where more than 200 would be needed.
 */
export const burnsForMean = (sd: number, halfWidth: number, confidence = 0.95): number | null => {
  for (let n = 2; n <= MOST; n++)
    if ((studentWithin(confidence, n - 1) * sd) / Math.sqrt(n) <= halfWidth) return n
  return null
}

/** Degrees of freedom that so many burns of each leave to judge the spread by. */
export type Degrees = (burns: number) => number

/** Welch's, at equal counts: burns − 1 times this share. */
const welchDegrees = (sd: readonly [number, number]): Degrees => {
  const [u, v] = [sd[0] ** 2, sd[1] ** 2]
  const share = (u + v) ** 2 / (u ** 2 + v ** 2)
  return (burns) => share * (burns - 1)
}

/**
 * Chance that so many burns of each of two stoves show a true difference, with a two-sided t test at
 * 1 − `confidence`. Spreads may differ; with Welch's degrees of freedom, or those of a spread that more burns share [1].
 */
export const power = (
  difference: number,
  sd: readonly [number, number],
  burns: number,
  confidence = 0.95,
  degrees = welchDegrees(sd),
): number => {
  const variance = (sd[0] ** 2 + sd[1] ** 2) / burns
  if (variance === 0) return difference === 0 ? 1 - confidence : 1
  const df = degrees(burns)
  const bound = studentWithin(confidence, df)
  const shift = Math.abs(difference) / Math.sqrt(variance)
  return 1 - noncentralTCdf(bound, df, shift) + noncentralTCdf(-bound, df, shift)
}

/** The usual chance asked for: four in five. Common practice, no source. */
export const USUAL_POWER = 0.8

/**
 * Burns of each stove so that a true difference of this size shows with the wanted chance. Null where that would
 * take more than 200 of each.
 */
export const burnsToSettle = (
  difference: number,
  sd: readonly [number, number],
  wanted = USUAL_POWER,
  confidence = 0.95,
  degrees = welchDegrees(sd),
): number | null => {
  if (difference === 0) return null
  const enough = (n: number): boolean => power(difference, sd, n, confidence, degrees) >= wanted
  if (!enough(MOST)) return null
  let [few, many] = [1, MOST]
  while (many - few > 1) {
    const middle = Math.floor((few + many) / 2)
    if (enough(middle)) many = middle
    else few = middle
  }
  return many
}

/**
 * Burns of each of two stoves until the difference of their means is known to ± `halfWidth`. Null where more than 200 of
 * each would be needed.
 */
export const burnsForDifference = (
  sd: readonly [number, number],
  halfWidth: number,
  confidence = 0.95,
  degrees = welchDegrees(sd),
): number | null => {
  const variance = sd[0] ** 2 + sd[1] ** 2
  if (variance === 0) return 2
  for (let n = 2; n <= MOST; n++)
    if (studentWithin(confidence, degrees(n)) * Math.sqrt(variance / n) <= halfWidth) return n
  return null
}
