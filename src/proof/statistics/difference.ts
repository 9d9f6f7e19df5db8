import type { Sample } from './sample.ts'
import { studentWithin, twoSided } from './special/studentT.ts'

/** A difference with its interval. */
export interface Difference {
  /** In the unit of the values. */
  readonly value: number
  readonly standardError: number
  readonly df: number
  /** Value over standard error [1]. */
  readonly t: number
  /** Two-sided [1]. */
  readonly p: number
  readonly low: number
  readonly high: number
  /** Of the interval [1]. */
  readonly confidence: number
}

/** An interval about a value whose standard error was estimated with `df` degrees of freedom. */
export const differenceOf = (
  value: number,
  standardError: number,
  df: number,
  confidence = 0.95,
): Difference => {
  const half = studentWithin(confidence, df) * standardError
  // Readings that agree to the last digit leave no error to divide by.
  const t = standardError > 0 ? value / standardError : value === 0 ? 0 : Math.sign(value) * Number.MAX_VALUE
  return {
    value,
    standardError,
    df,
    t,
    p: standardError > 0 ? twoSided(t, df) : value === 0 ? 1 : 0,
    low: value - half,
    high: value + half,
    confidence,
  }
}

/** Degrees of freedom of two variances that need not be equal [bib:welch1947]. */
export const welchDf = (a: Sample, b: Sample): number => {
  const [u, v] = [a.variance / a.count, b.variance / b.count]
  return u + v === 0
    ? a.count + b.count - 2
    : (u + v) ** 2 / (u ** 2 / (a.count - 1) + v ** 2 / (b.count - 1))
}

/**
 * a − b with Welch's interval, which asks for no equal spreads [bib:welch1947]. Null where one of the two has
 * fewer than two values.
 */
export const welch = (a: Sample, b: Sample, confidence = 0.95): Difference | null =>
  a.count < 2 || b.count < 2
    ? null
    : differenceOf(
        a.mean - b.mean,
        Math.sqrt(a.variance / a.count + b.variance / b.count),
        welchDf(a, b),
        confidence,
      )

/** a − b where both are taken to spread alike: Student's. Null for fewer than three values together. */
export const pooled = (a: Sample, b: Sample, confidence = 0.95): Difference | null => {
  const df = a.count + b.count - 2
  if (df < 1 || a.count < 1 || b.count < 1) return null
  const variance = ((a.count - 1) * a.variance + (b.count - 1) * b.variance) / df
  return differenceOf(a.mean - b.mean, Math.sqrt(variance * (1 / a.count + 1 / b.count)), df, confidence)
}
