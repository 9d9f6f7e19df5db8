import type { Amount } from '#proof/compare/amount.ts'
import type { Difference } from '#proof/statistics/difference.ts'
import type { Band } from '#science/bands/bands.ts'

/** What a burn is held against its prediction by. Units of the protocol; times in minutes. */
export interface Claim extends Amount {
  /** In the middle of a sentence. */
  readonly name: string
  /** After a share: `sooner`, `later`. */
  readonly lessWord: string
  readonly moreWord: string
}

/** How the phase ends in the prediction: at the boil, with the flame, or after as long as in the trial. */
export type PhaseEnd = 'boil' | 'flame out' | 'as long'

/** Where a measured figure lies against the band, the uncertainty of measurement counted in. */
export type Side = 'within' | 'above' | 'below'

/** One figure as measured beside the same as predicted. */
export interface PredictedFigure {
  readonly claim: Claim
  /** With the median coefficients; null where the prediction has no such figure. */
  readonly predicted: number | null
  /** 5th to 95th percentile over the coefficients; null where none were drawn or none of the sets has the figure. */
  readonly band: Band | null
  /** Null where the burn does not have it. */
  readonly measured: number | null
  /** Standard uncertainty of what was measured. */
  readonly u: number | null
  /** Measured − predicted. */
  readonly residual: number | null
  readonly side: Side | null
}

/** One trial beside its predicted burn. Plain data. */
export interface PredictedTrial {
  readonly trial: string
  readonly variant: string
  readonly stove: string
  /** Null: the model has the stove burn; else why not. */
  readonly noBurn: string | null
  readonly endsAt: PhaseEnd
  /** Share of the sets of coefficients that burn at all [1]; null where none were drawn. */
  readonly burns: number | null
  readonly figures: readonly PredictedFigure[]
  /** What was assumed where the trial does not say, and where it is not like the model; sentences. */
  readonly cautions: readonly string[]
}

/** One burn in the residuals of a claim. */
export interface Residual {
  /** Place in the list of trials. */
  readonly index: number
  readonly trial: string
  readonly variant: string
  readonly measured: number
  readonly predicted: number
  readonly residual: number
  /** Measured over predicted [1]. */
  readonly ratio: number
  readonly side: Side | null
}

/**
 * - `wrong`: this maker's mean lies outside the band, and the whole of its interval does.
 * - `too sure`: burns lie outside more often than chance allows, and not to one side.
 * - `leans`: to one side, and not beyond the band for certain.
 * - `holds`: nothing against it.
 * - `few`: fewer than three burns.
 */
export type ClaimVerdict = 'wrong' | 'too sure' | 'leans' | 'holds' | 'few'

/** A claim of the model over all trials. */
export interface ClaimResiduals {
  readonly claim: Claim
  readonly residuals: readonly Residual[]
  /** Burns outside their band, of those that have one; so many above it, so many below. */
  readonly outside: number
  readonly above: number
  readonly below: number
  readonly banded: number
  /** Chance of so many outside or more, were every band right and every burn drawn anew [1]; null without bands. */
  readonly chance: number | null
  /** Mean of ln(measured/predicted), over stoves where there are four and more, else over burns; null for fewer than two. */
  readonly bias: Difference | null
  readonly over: 'stoves' | 'burns'
  readonly verdict: ClaimVerdict
  readonly sentence: string
}
