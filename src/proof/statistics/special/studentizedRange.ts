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

const distribution = (groups: number, df: number): ((q: number) => number) => {
  const grid = gridOf(groups)
  const nodes = scaleNodes(df)
  const at = (q: number): number =>
    q <= 0 ? 0 : nodes.reduce((sum, { scale, weight }) => sum + weight * rangeCdf(q * scale, groups, grid), 0)
  return (q) => Math.min(at(q), 1)
}

/**
 * Studentized range: chance that the range of `groups` means, over their estimated standard error with `df` degrees
 * of freedom, stays below q: ∫ f(s) R(qs) ds, R(w) = k ∫ φ(z) [Φ(z) − Φ(z − w)]^(k−1) dz [bib:copenhaver1988].
 * Both integrals by the trapezium rule, to about 1e-10. Groups 2 to 100, df from 1 [1].
 */
export const studentizedRangeCdf = (q: number, groups: number, df: number): number =>
  distribution(groups, df)(q)

/** The q below which the studentized range stays with the given probability [1]. */
export const studentizedRangeQuantile = (probability: number, groups: number, df: number): number =>
  quantileOf(distribution(groups, df), probability, 3, 1e-12)
