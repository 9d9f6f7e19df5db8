/** A number that is guessed or measured by others, with how far off it may be. */
export interface Coefficient {
  readonly median: number
  /** Rough 5th and 95th percentile. */
  readonly low: number
  readonly high: number
  readonly unit: string
  readonly meaning: string
  readonly source: string
}
