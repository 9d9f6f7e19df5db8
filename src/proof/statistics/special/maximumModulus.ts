import { throughChebyshevPoints } from './chebyshev.ts'
import { scaleNodes } from './chi.ts'
import { normalCdf } from './normal.ts'
import { quantileOf } from './quantile.ts'

/** No standard normal number lies further out. */
const FAR = 8.6

/** Chance of a standard normal number within ±x. */
const within = throughChebyshevPoints((x) => 2 * normalCdf(x) - 1, FAR)

const distribution = (count: number, df: number): ((m: number) => number) => {
  const nodes = scaleNodes(df)
  return (m) =>
    m <= 0
      ? 0
      : Math.min(
          1,
          nodes.reduce((sum, { scale, weight }) => sum + weight * within(m * scale) ** count, 0),
        )
}

/**
 * Studentized maximum modulus [bib:dunnett1980]: chance that `count` independent standard normal numbers, over one estimated
 * standard deviation with `df` degrees of freedom, all stay within ±m: ∫ f(s) [2Φ(ms) − 1]^count ds [1]. The trapezium rule,
 * to about 1e-8. Count from 1, df from 1.
 */
export const maximumModulusCdf = (m: number, count: number, df: number): number => distribution(count, df)(m)

/** The m that none of them exceeds with the given probability [1]. */
export const maximumModulusQuantile = (probability: number, count: number, df: number): number =>
  quantileOf(distribution(count, df), probability, 3, 1e-12)
