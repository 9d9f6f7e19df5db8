import { type Smooth, smoothed } from './localLine.ts'
import { usualStep } from './step.ts'

/** How fast what stands on the scale gets lighter. */
export interface BurnRate {
  /** [s] */
  readonly time: Float64Array
  /** [kg/s]; less than nothing where something was put on. */
  readonly rate: Float64Array
  readonly bandwidth: number
  readonly method: string
}

/** A handful of twigs in a minute is what a small stove burns: long enough to see it on a scale of 1 g. A judgement [s]. */
export const USUAL_BANDWIDTH = 60
/** So many usual steps where readings are further apart. */
const STEPS = 4

/**
 * Burning rate from readings of a scale [s], [kg]: minus the slope of straight lines fitted within `bandwidth` [s] either way
 * [kg/s]. Nothing is worked out over a gap; what else leaves the scale is in it.
 */
export const burnRateOf = (
  time: Float64Array,
  mass: Float64Array,
  bandwidth = Math.max(USUAL_BANDWIDTH, STEPS * usualStep(time)),
): BurnRate => {
  const { smooth }: { readonly smooth: Smooth } = smoothed(time, mass, bandwidth)
  return {
    time: smooth.time,
    rate: smooth.slope.map((slope) => (slope === 0 ? 0 : -slope)),
    bandwidth,
    method: `slope of ${smooth.method}`,
  }
}
