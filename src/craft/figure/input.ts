/** A burn over time as the figure wants it. Plain data in SI units. */
export interface BurnFigureInput {
  readonly title: string
  /** Fuel, weather: what was burnt and how. */
  readonly subtitle: string
  readonly steps: readonly FigureStep[]
  /** Firepower between its 5th and 95th percentile, each moment by itself; null for none. */
  readonly band: FigureBand | null
  readonly pots: readonly FigurePot[]
  /** Of water there [K]. */
  readonly boilingPoint: number
  readonly events: readonly FigureEvent[]
  /** Sentences under the figure. */
  readonly notes: readonly string[]
}

/** What holds from `time` for `duration` [s]. */
export interface FigureStep {
  readonly time: number
  readonly duration: number
  readonly phase: 'lighting' | 'wood gas' | 'char'
  /** [W] */
  readonly firepower: number
  /** 0 at the top of the fuel, 1 at its floor. */
  readonly frontPosition: number
  /** [kg] */
  readonly char: number
}

export interface FigureBand {
  /** How many runs it is drawn from. */
  readonly runs: number
  /** [s] */
  readonly time: readonly number[]
  /** [W] */
  readonly low: readonly number[]
  readonly high: readonly number[]
}

/** One pot of water. */
export interface FigurePot {
  readonly litres: number
  /** When it goes on [s]. */
  readonly from: number
  /** When it boils; null if it does not [s]. */
  readonly boilsAt: number | null
  /** When it has boiled dry; null if water is left [s]. */
  readonly dryAt: number | null
  /** Of the water when it goes on [K]. */
  readonly start: number
  /** At the end of every step [K]. */
  readonly temperature: readonly number[]
}

export interface FigureEvent {
  /** [s] */
  readonly time: number
  readonly text: string
  /** Something was changed from outside: firepower jumps, and the line is not to smooth it. */
  readonly change: boolean
}
