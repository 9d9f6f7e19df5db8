import type { Unit } from '#proof/metrics/formulas.ts'
import type { Difference } from '#proof/statistics/difference.ts'
import type { PhaseKind } from '#proof/trial/schema.ts'

/** What a maker wants of a metric: less of it, more of it, or neither by itself. */
export type Wanted = 'less' | 'more' | 'neither'

/** A metric that variants are compared by. Values in the units of the protocol, as `metrics` gives them. */
export interface ComparedMetric {
  /** Phase and key, `high power/timeToBoil`; `turndown` belongs to both phases. */
  readonly id: string
  readonly key: string
  readonly phase: PhaseKind | null
  readonly name: string
  /** As the protocol writes it, `#` for the phase. */
  readonly symbol: string
  readonly unit: Unit
  readonly wanted: Wanted
}

/** One burn of one variant, as it stands in a picture. */
export interface Point {
  /** Place in the list of trials that were handed in. */
  readonly index: number
  readonly trial: string
  readonly variant: string
  readonly day: string
  readonly block: string
  readonly batch: string | null
  /** Which burn of its day, from 1; null where neither place nor lighting was noted. */
  readonly placeInDay: number | null
  readonly value: number
  /** Standard uncertainty that comes with the readings and instruments of this burn. */
  readonly u: number
  /** Something went wrong in this burn. */
  readonly mishap: boolean
}

export interface Interval {
  readonly low: number
  readonly high: number
}

/** Uncertainty of measurement, beside what burns differ by. Standard uncertainties, in the unit of the metric. */
export interface Measurement {
  /** From readings of each burn: it shows in the spread between burns, and more burns make it smaller. */
  readonly readings: number
  /** From what all burns share (scale, thermometer, heating value): no number of burns shows or mends it. */
  readonly shared: number
}

export interface VariantFigures {
  readonly variant: string
  readonly points: readonly Point[]
  readonly count: number
  readonly mean: number
  /** Standard deviation between burns; null for one burn. */
  readonly sd: number | null
  /** Coefficient of variation [1]; null for one burn or a mean of nothing. */
  readonly variation: number | null
  /** The mean of ever so many such burns most likely lies here (Student, each variant by itself); null for one burn. */
  readonly interval: Interval | null
  readonly measurement: Measurement
}

export type MethodKind = 'welch' | 'tukey' | 'games-howell' | 'dunnett-t3' | 'blocked' | 'none'

/** How a metric was compared, and why so. */
export interface Method {
  readonly kind: MethodKind
  /** In a heading: `Games–Howell`. */
  readonly name: string
  /** One or two sentences. */
  readonly reason: string
  /** What was taken out: days (or blocks) and fuel batches. */
  readonly blockedBy: readonly ('block' | 'batch')[]
  /** Bartlett's p for unlike spreads [1], told and deciding nothing; null where it was not asked for. */
  readonly unlikeSpreads: number | null
}

/**
 * - `better`, `worse`, `differs`: the interval leaves nothing out; `differs` where neither way is wanted.
 * - `alike`: the whole interval lies within the margin.
 * - `open`: it may be luck.
 * - `unknown`: too few burns for an interval.
 */
export type Verdict = 'better' | 'worse' | 'differs' | 'alike' | 'open' | 'unknown'

/** Burns of each of the two, all together; null: more than 200, or no answer. */
export interface MoreBurns {
  /** Until a true difference as large as it looks now shows in four of five tries. */
  readonly forThisDifference: number | null
  /** Until the interval is no wider than the margin either way. */
  readonly forMargin: number | null
  /** Burns of the one that has fewer by now. */
  readonly now: number
}

/** One variant against another. */
export interface Contrast {
  readonly variant: string
  readonly against: string
  /** `variant` − `against`; null where one has too few burns. */
  readonly difference: Difference | null
  /** Share of the mean of `against` [1]; null for a mean of nothing. */
  readonly relative: number | null
  readonly verdict: Verdict
  /** What a maker should take from it. */
  readonly sentence: string
  /** How many more burns would settle it, as a sentence; null where it is settled. */
  readonly moreSentence: string | null
  readonly more: MoreBurns | null
  readonly measurement: Measurement
}

/** How a metric runs with the order of burns once variants and blocks are taken out. */
export interface Drift {
  /** Along the burns of a day, or of the whole series. */
  readonly over: 'day' | 'series'
  /** A burn, in the unit of the metric. */
  readonly slope: Difference
  readonly found: boolean
  /** Null where no drift shows. */
  readonly sentence: string | null
}

export interface MetricComparison {
  readonly metric: ComparedMetric
  /** Every variant that has the metric, the reference first. */
  readonly variants: readonly VariantFigures[]
  readonly method: Method
  /** Smallest difference that matters, in the unit of the metric. */
  readonly margin: number
  /** Every two variants, those with the reference first. */
  readonly contrasts: readonly Contrast[]
  readonly drift: Drift | null
  /** Burns that do not have it, and why. */
  readonly missing: readonly { readonly index: number; readonly trial: string; readonly reason: string }[]
  /** What a reader of this metric should know; sentences. */
  readonly notes: readonly string[]
}

/** Something about the burns as a whole that may mislead, whatever the metric. */
export interface Warning {
  /** A stable word for programs: `order.separate`, `conditions.lid`. */
  readonly code: string
  readonly sentence: string
  readonly fix: string
}

/** A variant over all that was asked, against the reference. */
export interface VariantVerdict {
  readonly variant: string
  readonly burns: number
  /** On the question. */
  readonly verdict: Verdict
  /** Names of other metrics in which it shows as better or as worse. */
  readonly better: readonly string[]
  readonly worse: readonly string[]
  readonly sentence: string
}

/** Plain data, ready for JSON and for pictures. */
export interface Comparison {
  /** What the others are held against. */
  readonly reference: string
  /** Every variant with its burns, the reference first. */
  readonly variants: readonly { readonly variant: string; readonly burns: number }[]
  /** Id of the metric that the comparison is about; the others are beside it. Null where no metric is shared. */
  readonly question: string | null
  readonly confidence: number
  readonly metrics: readonly MetricComparison[]
  /** Of each variant but the reference. */
  readonly verdicts: readonly VariantVerdict[]
  readonly warnings: readonly Warning[]
  /** Trials that were left out, and why. */
  readonly leftOut: readonly { readonly index: number; readonly trial: string; readonly reason: string }[]
  /** What holds of every comparison of this kind; sentences. */
  readonly provenance: readonly string[]
}

export interface CompareOptions {
  /** Variant that the others are held against; the first by name when left out. */
  readonly reference?: string
  /** Key or id of the metric that the comparison is about. */
  readonly question?: string
  /** Of the intervals [1]. */
  readonly confidence?: number
  /** Smallest difference that matters, as a share of the reference's mean [1]. */
  readonly margin?: number
  /** Burns in which something went wrong. */
  readonly mishaps?: 'keep' | 'leave out'
  /** Instead of the one that suits the data. */
  readonly method?: Exclude<MethodKind, 'none'>
}
