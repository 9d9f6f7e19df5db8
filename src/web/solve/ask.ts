import type { Problem } from '#basis/problem.ts'
import type { Conditions } from '#compose/conditions.ts'
import type { BurnBands } from '#science/answers/burn/bands.ts'
import type { ReportOutcome } from '#science/answers/burn/report.ts'
import type { LiveBurn } from '#science/answers/live/liveBurn.ts'
import type { Turndown } from '#science/answers/turndown.ts'
import type { NoBurn, PredictionOutcome } from '#science/steady/predict.ts'
import type { Moment } from '#science/steady/prediction.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Stove } from '#stove/model.ts'

/** A stove that was read, or its file. */
export type Given = Stove | StoveFile

/** What a worker is asked. Plain data. */
export type Ask = { readonly stove: Given; readonly conditions: Conditions } & (
  | { readonly kind: 'steady' }
  | { readonly kind: 'burn' }
  | { readonly kind: 'turndown' }
  | { readonly kind: 'bands'; readonly samples: number }
  /**
   * The burn of a stove under the hand; `at`: the time whose moment is wanted, null: front half way down [s]. Asks with the
   * same `key` are of the same stove in the same conditions: the worker burns it once.
   */
  | { readonly kind: 'live'; readonly key: number; readonly at: number | null }
)

/** The burn of a stove under the hand and all that flows at one time of it. */
export type LiveAnswer =
  | {
      readonly kind: 'burn'
      readonly burn: LiveBurn
      /** Of the burn, at the time asked for. */
      readonly at: number
      readonly step: number
      readonly moment: Moment
    }
  | { readonly kind: 'no burn'; readonly noBurn: NoBurn }

/** Null: the stove has no damper. */
export type TurndownAnswer = Turndown | null
/** Null: it does not burn even with the likeliest coefficients. */
export type BandsAnswer = BurnBands | null

export interface Answers {
  readonly steady: PredictionOutcome
  readonly burn: ReportOutcome
  readonly turndown: TurndownAnswer
  readonly bands: BandsAnswer
  readonly live: LiveAnswer
}

/** What was asked for, or what is wrong with what was given. */
export type Answered<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly sentence: string; readonly problems: readonly Problem[] }

/** To the worker: an ask by its number, or word that nobody wants it any more. */
export type ToWorker =
  | { readonly id: number; readonly ask: Ask }
  | { readonly id: number; readonly cancel: true }

/** From the worker. */
export type FromWorker =
  | { readonly id: number; readonly answer: Answered<Answers[Ask['kind']]> }
  | { readonly id: number; readonly done: number; readonly of: number }
