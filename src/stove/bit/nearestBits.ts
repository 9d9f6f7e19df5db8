import type { Metres } from '#basis/units.ts'
import type { Bit } from '#stove/model.ts'

export interface NearestBits {
  /** The largest bit that is not larger; null where all are. */
  readonly below: Bit | null
  /** The smallest bit that is not smaller; null where all are. The same as `below` where one fits exactly. */
  readonly above: Bit | null
}

/** Two ways of writing one size differ by rounding in the last place, far below a nanometre. */
const SAME_SIZE = 1e-9

/** The bits nearest to a diameter among those owned, below and above; of equal bits the first [m]. */
export const nearestBits = (diameter: Metres, bits: readonly Bit[]): NearestBits => {
  let below: Bit | null = null
  let above: Bit | null = null
  for (const bit of bits) {
    if (bit.diameter <= diameter + SAME_SIZE && (below === null || bit.diameter > below.diameter + SAME_SIZE))
      below = bit
    if (bit.diameter >= diameter - SAME_SIZE && (above === null || bit.diameter < above.diameter - SAME_SIZE))
      above = bit
  }
  return { below, above }
}
