import type { Coefficient } from '#science/coefficient.ts'
import type { CoefficientKey, Coefficients } from '#science/coefficients.ts'
import { coefficientTable } from '#science/coefficients.ts'

/** The 95th percentile of the standard normal distribution [1]. */
const Z95 = 1.6448536269514722

/**
 * A coefficient's value at a percentile 0 < u < 1. The table gives a median and rough 5th and 95th percentiles: each side is
 * half a normal distribution, lognormal where the coefficient is above zero throughout.
 */
export const valueAt = ({ median, low, high }: Coefficient, u: number): number => {
  const z = normalQuantile(u)
  if (low > 0) {
    const sigma = (z < 0 ? Math.log(median / low) : Math.log(high / median)) / Z95
    return median * Math.exp(sigma * z)
  }
  return median + ((z < 0 ? median - low : high - median) / Z95) * z
}

/** One set of coefficients from one point of the unit cube, components in the order of the table. */
export const coefficientsAt = (point: readonly number[]): Coefficients =>
  Object.fromEntries(
    Object.entries(coefficientTable).map(([key, row], i) => [key, valueAt(row, point[i] ?? 0.5)]),
  ) as Record<CoefficientKey, number>

export const COEFFICIENT_KEYS = Object.keys(coefficientTable) as readonly CoefficientKey[]

/**
 * Inverse of the standard normal distribution [1]. Acklam's rational approximation, relative error 1.2e-9; from memory,
 * checked against SciPy. 0 < u < 1.
 */
export const normalQuantile = (u: number): number => {
  if (u < 0.02425) return tail(u)
  if (u > 1 - 0.02425) return -tail(1 - u)
  const q = u - 0.5
  const r = q * q
  return (
    ((((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r + 138.357751867269) * r -
      30.66479806614716) *
      r +
      2.506628277459239) *
      q) /
    (((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r + 66.80131188771972) * r -
      13.28068155288572) *
      r +
      1)
  )
}

const tail = (u: number): number => {
  const q = Math.sqrt(-2 * Math.log(u))
  return (
    (((((-0.007784894002430293 * q - 0.3223964580411365) * q - 2.400758277161838) * q - 2.549732539343734) *
      q +
      4.374664141464968) *
      q +
      2.938163982698783) /
    ((((0.007784695709041462 * q + 0.3224671290700398) * q + 2.445134137142996) * q + 3.754408661907416) * q +
      1)
  )
}
