import { throughChebyshevPoints } from './chebyshev.ts'
import { scaleNodes } from './chi.ts'
import { normalCdf, normalDensity } from './normal.ts'
import { quantileOf } from './quantile.ts'

/** Beyond this the normal density is below a last bit. */
const FAR = 8.6

interface Grid {
  readonly z: readonly number[]
  readonly area: readonly number[]
  readonly weight: readonly number[]
}

const gridOf = (groups: number): Grid => {
  const step = 0.36 / Math.sqrt(groups)
  const count = Math.ceil((2 * FAR) / step)
  const z = Array.from({ length: count + 1 }, (_, i) => -FAR + i * step)
  return { z, area: z.map(normalCdf), weight: z.map((at) => groups * step * normalDensity(at)) }
}

/** Chance that the range of `groups` standard normal numbers stays below w. */
const rangeCdf = (w: number, groups: number, { z, area, weight }: Grid): number => {
  let sum = 0
  for (let i = 0; i < z.length; i++)
    sum += (weight[i] as number) * ((area[i] as number) - normalCdf((z[i] as number) - w)) ** (groups - 1)
  return sum
}

/** No range of standard normal numbers is wider. */
const WIDEST = 2 * FAR

/** The chance of a range below w, laid down once: it is asked for at hundreds of places. */
const rangeCurve = (groups: number): ((w: number) => number) => {
  const grid = gridOf(groups)
  return throughChebyshevPoints((w) => (w <= 0 ? 0 : w >= WIDEST ? 1 : rangeCdf(w, groups, grid)), WIDEST)
}

/** The studentized range of so many groups. */
export interface StudentizedRange {
  readonly groups: number
  /** Chance that it stays below q with `df` degrees of freedom [1]. */
  readonly cdf: (q: number, df: number) => number
  /** What it stays below with the given probability [1]. */
  readonly quantile: (probability: number, df: number) => number
}

/**
 * Studentized range: the range of `groups` means over their estimated standard error with `df` degrees of freedom:
 * ∫ f(s) R(qs) ds, R(w) = k ∫ φ(z) [Φ(z) − Φ(z − w)]^(k−1) dz [bib:copenhaver1988]. Both integrals by the trapezium
 * rule, to about 1e-10. Groups 2 to 100, df from 1. Whoever asks often makes it once: the first integral is laid down
 * then.
 */
export const studentizedRange = (groups: number): StudentizedRange => {
  const curve = rangeCurve(groups)
  const distribution = (df: number): ((q: number) => number) => {
    const nodes = scaleNodes(df)
    return (q) =>
      q <= 0
        ? 0
        : Math.min(
            1,
            nodes.reduce((sum, { scale, weight }) => sum + weight * curve(q * scale), 0),
          )
  }
  return {
    groups,
    cdf: (q, df) => distribution(df)(q),
    quantile: (probability, df) => quantileOf(distribution(df), probability, 3, 1e-12),
  }
}

/** As `studentizedRange`, asked once [1]. */
export const studentizedRangeCdf = (q: number, groups: number, df: number): number =>
  studentizedRange(groups).cdf(q, df)

/** The q below which the studentized range stays with the given probability [1]. */
export const studentizedRangeQuantile = (probability: number, groups: number, df: number): number =>
  studentizedRange(groups).quantile(probability, df)
