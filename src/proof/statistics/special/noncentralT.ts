import { scaleNodes } from './chi.ts'
import { normalCdf } from './normal.ts'

/** Noncentral t distribution: chance of (Z + δ)/s ≤ t, by averaging Φ(ts − δ) over s; to about 1e-12 [1]. */
export const noncentralTCdf = (t: number, df: number, noncentrality: number): number =>
  scaleNodes(df).reduce((sum, { scale, weight }) => sum + weight * normalCdf(t * scale - noncentrality), 0)
