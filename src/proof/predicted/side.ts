import type { Band } from '#science/bands/bands.ts'
import type { Side } from './model.ts'

/** The 95th percentile of the standard normal distribution [1]. */
const Z95 = 1.6448536269514722

/** The band with the uncertainty of what was measured in it, as half a normal distribution to each side. */
export const bandEdges = (
  { low, median, high }: Band,
  u: number,
): { readonly low: number; readonly high: number } => ({
  low: median - Math.hypot(median - low, Z95 * u),
  high: median + Math.hypot(high - median, Z95 * u),
})

/** Where a measured figure lies against its band. */
export const sideOf = (band: Band, measured: number, u: number): Side => {
  const { low, high } = bandEdges(band, u)
  return measured > high ? 'above' : measured < low ? 'below' : 'within'
}
