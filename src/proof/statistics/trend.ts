import { type Difference, differenceOf } from './difference.ts'
import { leastSquares } from './leastSquares.ts'
import { sampleOf } from './sample.ts'

export interface Line {
  /** In the unit of y over that of x. */
  readonly slope: Difference
  /** Value at x = 0, in the unit of y. */
  readonly intercept: Difference
  readonly residualSd: number
  /** Share of the variation of y that the line takes up [1]. */
  readonly explained: number
}

/** Straight line by least squares. Null for fewer than three points, or for points that share one x. */
export const straightLine = (x: readonly number[], y: readonly number[], confidence = 0.95): Line | null => {
  if (x.length < 3) return null
  const [xs, ys] = [sampleOf(x), sampleOf(y)]
  const dx = x.map((value) => value - xs.mean)
  const dy = y.map((value) => value - ys.mean)
  const fit = leastSquares([dx.map(() => 1), dx], dy)
  if (fit === null) return null
  const [level = 0, slope = 0] = fit.coefficients
  const [levelError = 0, slopeError = 0] = fit.standardErrors
  const total = dy.reduce((sum, value) => sum + value * value, 0)
  return {
    slope: differenceOf(slope, slopeError, fit.df, confidence),
    intercept: differenceOf(
      ys.mean + level - slope * xs.mean,
      Math.hypot(levelError, slopeError * xs.mean),
      fit.df,
      confidence,
    ),
    residualSd: fit.residualSd,
    explained: total === 0 ? 0 : 1 - (fit.residualSd ** 2 * fit.df) / total,
  }
}
