import { incompleteBeta } from './beta.ts'
import { quantileOf } from './quantile.ts'

/** Chance of |T| beyond |t| with `df` degrees of freedom, whole or not: a two-sided p [1]. */
export const twoSided = (t: number, df: number): number => {
  const square = t * t
  return incompleteBeta(df / (df + square), df / 2, 0.5, square / (df + square))
}

/** The t that a share of `confidence` lies within, either side of nothing [1]. */
export const studentWithin = (confidence: number, df: number): number =>
  quantileOf((t) => 1 - twoSided(Math.max(t, 0), df), confidence, 0)

/** Chance of a variance ratio beyond `f`: upper tail of Fisher's distribution [1]. */
export const fisherTail = (f: number, between: number, within: number): number =>
  f <= 0
    ? 1
    : incompleteBeta(
        within / (within + between * f),
        within / 2,
        between / 2,
        (between * f) / (within + between * f),
      )
