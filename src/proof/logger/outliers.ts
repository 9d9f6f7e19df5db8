import type { Smoothed } from './localLine.ts'
import type { Channel } from './readLog.ts'

/** A reading far from its neighbours. It stays where it is: what to think of it is for the maker to say. */
export interface Outlier {
  readonly channel: string
  /** By the logger's clock [s]. */
  readonly time: number
  /** As read [K] or [kg], and where the smooth line passes. */
  readonly value: number
  readonly expected: number
  /** Of the file, from 1. */
  readonly line: number
}

/** Normal readings have a standard deviation of so many median absolute residuals. */
const SIGMA = 1.4826
/** So many standard deviations are not chance in an hour at 10 Hz: one in 2e9; a judgement. */
const FAR = 6

/**
 * Middle of the two readings before and the two after. A flue that shoots up leaves the smooth line too, but not its
 * neighbours; a knock, even over two readings, leaves both.
 */
const besides = (value: Float64Array, i: number): number => {
  const near = [i - 2, i - 1, i + 1, i + 2].flatMap((k) => value[k] ?? []).sort((a, b) => a - b)
  const middle = near.length >> 1
  const [low = Number.NaN, high = Number.NaN] = [near[middle - 1], near[middle]]
  return near.length % 2 === 1 ? high : (low + high) / 2
}

/** `resolution`: less than the last digit shown is no distance [unit of the readings]. */
export const outliersOf = (
  { name, time, value, line }: Channel,
  { residuals, typical }: Smoothed,
  resolution: number,
): readonly Outlier[] => {
  const bound = FAR * Math.max(SIGMA * typical, resolution)
  const found: Outlier[] = []
  for (let i = 0; i < residuals.length; i++) {
    const residual = residuals[i] as number
    if (Math.abs(residual) <= bound) continue
    if (Math.abs((value[i] as number) - besides(value, i)) <= bound) continue
    found.push({
      channel: name,
      time: time[i] as number,
      value: value[i] as number,
      expected: (value[i] as number) - residual,
      line: line[i] as number,
    })
  }
  return found
}

/** Smallest step between readings that differ: the last digit that the logger shows [unit of the readings]. */
export const resolutionOf = (value: Float64Array): number => {
  let least = Number.POSITIVE_INFINITY
  for (let i = 1; i < value.length; i++) {
    const step = Math.abs((value[i] as number) - (value[i - 1] as number))
    // Below this a step is the rounding of the conversion to SI.
    if (step > 1e-9 * Math.abs(value[i] as number) && step < least) least = step
  }
  return Number.isFinite(least) ? least : 0
}
