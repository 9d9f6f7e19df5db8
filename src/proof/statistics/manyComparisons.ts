import { type Difference, welchDf } from './difference.ts'
import type { Sample } from './sample.ts'
import { type StudentizedRange, studentizedRange } from './special/studentizedRange.ts'

/** One pair out of several groups; the confidence holds for all pairs together. */
export interface PairDifference extends Difference {
  /** Places in the list of groups. */
  readonly first: number
  readonly second: number
}

/** Every two of so many, each pair once. */
export const pairsOf = (count: number): readonly (readonly [number, number])[] =>
  Array.from({ length: count }, (_, i) =>
    Array.from({ length: count - i - 1 }, (__, j) => [i, i + j + 1] as const),
  ).flat()

/** A pair whose interval holds for all pairs of the groups together: the studentized range's. */
export const pairDifference = (
  first: number,
  second: number,
  { value, standardError, df }: Pick<Difference, 'value' | 'standardError' | 'df'>,
  range: StudentizedRange,
  confidence: number,
  bound = range.quantile(confidence, df),
): PairDifference => {
  const t = standardError > 0 ? value / standardError : value === 0 ? 0 : Math.sign(value) * Number.MAX_VALUE
  const half = (bound / Math.SQRT2) * standardError
  const p = standardError > 0 ? Math.max(0, 1 - range.cdf(Math.abs(t) * Math.SQRT2, df)) : Number(value === 0)
  return { first, second, value, standardError, df, t, p, low: value - half, high: value + half, confidence }
}

/**
 * Games–Howell: all pairs, spreads need not be equal [bib:games1976]. Pairs of `first` − `second`; null where a
 * group has fewer than two values or there are fewer than two groups.
 */
export const gamesHowell = (
  samples: readonly Sample[],
  confidence = 0.95,
): readonly PairDifference[] | null => {
  if (samples.length < 2 || samples.some(({ count }) => count < 2)) return null
  const range = studentizedRange(samples.length)
  return pairsOf(samples.length).map(([i, j]) => {
    const [a, b] = [samples[i] as Sample, samples[j] as Sample]
    const standardError = Math.sqrt(a.variance / a.count + b.variance / b.count)
    const pair = { value: a.mean - b.mean, standardError, df: welchDf(a, b) }
    return pairDifference(i, j, pair, range, confidence)
  })
}

/**
 * Tukey–Kramer: all pairs, one spread for all groups [bib:kramer1956]. Null where no spread can be had.
 */
export const tukey = (samples: readonly Sample[], confidence = 0.95): readonly PairDifference[] | null => {
  const df = samples.reduce((all, { count }) => all + count - 1, 0)
  if (samples.length < 2 || df < 1) return null
  const variance = samples.reduce((all, one) => all + (one.count - 1) * one.variance, 0) / df
  const range = studentizedRange(samples.length)
  const bound = range.quantile(confidence, df)
  return pairsOf(samples.length).map(([i, j]) => {
    const [a, b] = [samples[i] as Sample, samples[j] as Sample]
    const standardError = Math.sqrt(variance * (1 / a.count + 1 / b.count))
    return pairDifference(i, j, { value: a.mean - b.mean, standardError, df }, range, confidence, bound)
  })
}
