import { decimalSums, quotient } from './decimalSums.ts'
import { fisherTail } from './special/studentT.ts'

export interface AnalysisOfVariance {
  readonly between: { readonly df: number; readonly squares: number }
  readonly within: { readonly df: number; readonly squares: number }
  /** Ratio of the mean squares [1]. */
  readonly f: number
  /** Chance of as much between groups that are all alike [1]. */
  readonly p: number
  /** Share of the variation that lies between the groups [1]. */
  readonly explained: number
  /** Spread within the groups, in the unit of the values. */
  readonly residualSd: number
}

const scaledTo = (value: bigint, from: number, to: number): bigint => value * 10n ** BigInt(from - to)

/**
 * One-way analysis of variance, exact for decimals as written.
 * Null for fewer than two groups, an empty one, or no group with two values.
 */
export const analysisOfVariance = (groups: readonly (readonly number[])[]): AnalysisOfVariance | null => {
  const sums = groups.map(decimalSums)
  const n = sums.reduce((all, { count }) => all + count, 0)
  const df = { between: groups.length - 1, within: n - groups.length }
  if (df.between < 1 || df.within < 1 || sums.some(({ count }) => count === 0)) return null
  const exponent = Math.min(...sums.map((one) => one.exponent))
  const rows = sums.map((one) => ({
    count: BigInt(one.count),
    sum: scaledTo(one.sum, one.exponent, exponent),
    squares: scaledTo(one.squares, 2 * one.exponent, 2 * exponent),
  }))
  // Everything over the product of all counts, so that nothing is rounded before the end.
  const common = rows.reduce((all, { count }) => all * count, BigInt(n))
  const total = rows.reduce((all, { sum }) => all + sum, 0n)
  const squares = rows.reduce((all, one) => all + one.squares, 0n)
  const ofGroups = rows.reduce((all, { sum, count }) => all + (sum * sum * common) / count, 0n)
  const between = ofGroups - (total * total * common) / BigInt(n)
  const within = squares * common - ofGroups
  const f =
    within === 0n
      ? between === 0n
        ? 0
        : Number.MAX_VALUE
      : quotient(between * BigInt(df.within), within * BigInt(df.between), 0)
  const inside = quotient(within, common, 2 * exponent)
  return {
    between: { df: df.between, squares: quotient(between, common, 2 * exponent) },
    within: { df: df.within, squares: inside },
    f,
    p: fisherTail(f, df.between, df.within),
    explained: between + within === 0n ? 0 : quotient(between, between + within, 0),
    residualSd: Math.sqrt(inside / df.within),
  }
}
