/**
 * How hot bare metal may be before a touch burns the skin: ISO 13732-1:2006, uncoated metal, where the burn
 * threshold begins and ends for each contact time, from memory. A caution, never a permission: thresholds,
 * not limits, for healthy adult skin. Columns: contact time [s], threshold from and to [K].
 */
const THRESHOLDS: readonly (readonly [number, number, number])[] = [
  [0.5, 340.15, 346.15],
  [1, 338.15, 343.15],
  [10, 328.15, 328.15],
  [60, 324.15, 324.15],
  [600, 321.15, 321.15],
  [28800, 316.15, 316.15],
]

export interface BurnThreshold {
  /** Below this no burn is expected [K]. */
  readonly from: number
  /** Above this a burn is [K]. */
  readonly to: number
  /**
   * Whether the contact time is one that the standard covers, 0.5 s to 8 h; beyond, the end values are given.
   */
  readonly covered: boolean
}

/**
 * Burn threshold of bare metal by contact time [K]; straight lines in the logarithm of time between the rows.
 */
export const burnThreshold = (contactTime: number): BurnThreshold => {
  const first = THRESHOLDS[0] as readonly [number, number, number]
  const last = THRESHOLDS[THRESHOLDS.length - 1] as readonly [number, number, number]
  if (!(contactTime >= first[0])) return { from: first[1], to: first[2], covered: false }
  for (let i = 1; i < THRESHOLDS.length; i++) {
    const [time, from, to] = THRESHOLDS[i] as readonly [number, number, number]
    if (contactTime > time) continue
    const [before, fromBefore, toBefore] = THRESHOLDS[i - 1] as readonly [number, number, number]
    const share = Math.log(contactTime / before) / Math.log(time / before)
    return {
      from: fromBefore + (from - fromBefore) * share,
      to: toBefore + (to - toBefore) * share,
      covered: true,
    }
  }
  return { from: last[1], to: last[2], covered: false }
}

/** What a touch of so long does: `safe` is never said. */
export type TouchRisk = 'no burn expected' | 'may burn' | 'burns'

/**
 * What a touch of `contactTime` [s] on bare metal of `surface` [K] does. `burnThreshold` tells the source.
 */
export const touchRisk = (surface: number, contactTime: number): TouchRisk => {
  const { from, to } = burnThreshold(contactTime)
  return surface < from ? 'no burn expected' : surface < to ? 'may burn' : 'burns'
}

/**
 * Longest touch before a burn may come [s]: where the lower threshold meets the surface; null when even the
 * briefest may burn.
 */
export const longestTouch = (surface: number): number | null => {
  const first = THRESHOLDS[0] as readonly [number, number, number]
  if (surface >= first[1]) return null
  for (let i = 1; i < THRESHOLDS.length; i++) {
    const [time, from] = THRESHOLDS[i] as readonly [number, number, number]
    if (surface < from) continue
    const [before, fromBefore] = THRESHOLDS[i - 1] as readonly [number, number, number]
    return before * (time / before) ** ((fromBefore - surface) / (fromBefore - from))
  }
  return Number.POSITIVE_INFINITY
}
