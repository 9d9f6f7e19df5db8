import { logGamma } from './gamma.ts'

/** Steps across a narrow bell of ln s; the trapezium rule gains digits with every one on so smooth a curve. */
const STEPS = 96
/** Widest step: the density is analytic to π/4 off the real line, so what is left is e^(−2π·π/4/0.14), a last bit. */
const WIDEST = 0.14
/** How far out the density still counts: e⁻³⁷ is less than a last bit. */
const DEPTH = 37

/** A scale s = χ/√ν with its weight; the weights add up to one. */
export interface ScaleNode {
  readonly scale: number
  readonly weight: number
}

/**
 * Nodes to average a function of s = χ_ν/√ν over: the estimated standard deviation over the true one. The density of
 * y = ln s is smooth and dies away at both ends, so the trapezium rule converges exponentially
 * [bib:trefethen2014].
 */
export const scaleNodes = (df: number): readonly ScaleNode[] => {
  const logNorm = Math.log(2) + (df / 2) * Math.log(df / 2) - logGamma(df / 2)
  const logDensity = (y: number): number => logNorm + df * y - (df / 2) * Math.exp(2 * y)
  const top = logDensity(0)
  const edge = (direction: 1 | -1): number => {
    let y = direction / Math.sqrt(df)
    while (logDensity(y) > top - DEPTH) y *= 1.1
    return y
  }
  const [from, to] = [edge(-1), edge(1)]
  const steps = Math.ceil((to - from) / Math.min((to - from) / STEPS, WIDEST))
  const step = (to - from) / steps
  return Array.from({ length: steps + 1 }, (_, i) => {
    const y = from + i * step
    return { scale: Math.exp(y), weight: step * Math.exp(logDensity(y)) }
  })
}
