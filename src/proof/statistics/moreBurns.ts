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

/**
 * Chance that so many burns of each of two stoves show a true difference, with a two-sided t test at
 * 1 − `confidence`. Spreads may differ: Welch's degrees of freedom at equal counts [1].
 */
export const power = (
  difference: number,
  sd: readonly [number, number],
  burns: number,
  confidence = 0.95,
): number => {
  const [u, v] = [sd[0] ** 2 / burns, sd[1] ** 2 / burns]
  if (u + v === 0) return difference === 0 ? 1 - confidence : 1
  const df = (u + v) ** 2 / ((u ** 2 + v ** 2) / (burns - 1))
  const bound = studentWithin(confidence, df)
  const shift = Math.abs(difference) / Math.sqrt(u + v)
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
): number | null => {
  if (difference === 0) return null
  const enough = (n: number): boolean => power(difference, sd, n, confidence) >= wanted
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
 * Burns of each of two stoves until the difference of their means is known to ± `halfWidth`, with Welch's interval.
 * Null where more than 200 of each would be needed.
 */
export const burnsForDifference = (
  sd: readonly [number, number],
  halfWidth: number,
  confidence = 0.95,
): number | null => {
  const [u, v] = [sd[0] ** 2, sd[1] ** 2]
  if (u + v === 0) return 2
  // At equal counts Welch's degrees of freedom are n − 1 times this.
  const share = (u + v) ** 2 / (u ** 2 + v ** 2)
  for (let n = 2; n <= MOST; n++)
    if (studentWithin(confidence, share * (n - 1)) * Math.sqrt((u + v) / n) <= halfWidth) return n
  return null
}
