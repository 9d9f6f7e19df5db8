import { type Difference, welchDf } from './difference.ts'
import type { Sample } from './sample.ts'
import { maximumModulusCdf, maximumModulusQuantile } from './special/maximumModulus.ts'
import { studentizedRange } from './special/studentizedRange.ts'

/** One pair out of several groups; the confidence holds for all pairs together. */
export interface PairDifference extends Difference {
  /** Places in the list of groups. */
  readonly first: number
  readonly second: number
}

/** How far all pairs together may be off, in standard errors. */
export interface Together {
  /** Chance that no pair is further off than `t` [1]. */
  readonly within: (t: number, df: number) => number
  /** What none exceeds with the given confidence [1]. */
  readonly bound: (confidence: number, df: number) => number
}

/** Every two of so many, each pair once. */
export const pairsOf = (count: number): readonly (readonly [number, number])[] =>
  Array.from({ length: count }, (_, i) =>
    Array.from({ length: count - i - 1 }, (__, j) => [i, i + j + 1] as const),
  ).flat()

/** By the range of as many means that share one spread. Whoever asks often makes it once. */
export const byRange = (groups: number): Together => {
  const range = studentizedRange(groups)
  return {
    within: (t, df) => range.cdf(t * Math.SQRT2, df),
    bound: (confidence, df) => range.quantile(confidence, df) / Math.SQRT2,
  }
}

/** By the largest of as many as there are pairs, taken as if each were by itself: never less than they truly need. */
const byModulus = (groups: number): Together => {
  const count = (groups * (groups - 1)) / 2
  return {
    within: (t, df) => maximumModulusCdf(t, count, df),
    bound: (confidence, df) => maximumModulusQuantile(confidence, count, df),
  }
}

/** A pair whose interval holds for all pairs of the groups together. */
export const pairDifference = (
  first: number,
  second: number,
  { value, standardError, df }: Pick<Difference, 'value' | 'standardError' | 'df'>,
  together: Together,
  confidence: number,
  bound = together.bound(confidence, df),
): PairDifference => {
  const t = standardError > 0 ? value / standardError : value === 0 ? 0 : Math.sign(value) * Number.MAX_VALUE
  const half = bound * standardError
  const p = standardError > 0 ? Math.max(0, 1 - together.within(Math.abs(t), df)) : Number(value === 0)
  return { first, second, value, standardError, df, t, p, low: value - half, high: value + half, confidence }
}

/** All pairs, each with the spreads of its own two groups and Welch's degrees of freedom. */
const withOwnSpreads = (
  samples: readonly Sample[],
  together: (groups: number) => Together,
  confidence: number,
): readonly PairDifference[] | null => {
  if (samples.length < 2 || samples.some(({ count }) => count < 2)) return null
  const all = together(samples.length)
  return pairsOf(samples.length).map(([i, j]) => {
    const [a, b] = [samples[i] as Sample, samples[j] as Sample]
    const standardError = Math.sqrt(a.variance / a.count + b.variance / b.count)
    const pair = { value: a.mean - b.mean, standardError, df: welchDf(a, b) }
    return pairDifference(i, j, pair, all, confidence)
  })
}

/**
 * Games–Howell: all pairs, spreads need not be equal [bib:games1976]. Pairs of `first` − `second`; null where a
 * group has fewer than two values or there are fewer than two groups.
 */
export const gamesHowell = (
  samples: readonly Sample[],
  confidence = 0.95,
): readonly PairDifference[] | null => withOwnSpreads(samples, byRange, confidence)

/**
 * Dunnett's T3: as Games and Howell, with the studentized maximum modulus instead of the range, which keeps what it
 * promises with few values too [bib:dunnett1980]. Null likewise.
 */
export const dunnettT3 = (samples: readonly Sample[], confidence = 0.95): readonly PairDifference[] | null =>
  withOwnSpreads(samples, byModulus, confidence)

/**
 * Tukey–Kramer: all pairs, one spread for all groups [bib:kramer1956]. Null where no spread can be had.
 */
export const tukey = (samples: readonly Sample[], confidence = 0.95): readonly PairDifference[] | null => {
  const df = samples.reduce((all, { count }) => all + count - 1, 0)
  if (samples.length < 2 || df < 1) return null
  const variance = samples.reduce((all, one) => all + (one.count - 1) * one.variance, 0) / df
  const range = byRange(samples.length)
  const bound = range.bound(confidence, df)
  return pairsOf(samples.length).map(([i, j]) => {
    const [a, b] = [samples[i] as Sample, samples[j] as Sample]
    const standardError = Math.sqrt(variance * (1 / a.count + 1 / b.count))
    return pairDifference(i, j, { value: a.mean - b.mean, standardError, df }, range, confidence, bound)
  })
}
