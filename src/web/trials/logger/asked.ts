import type { Outcome } from '#basis/problem.ts'
import type { ChannelInspection } from '#proof/logger/inspect.ts'
import type { Answers, Mapping } from '#proof/logger/mapping.ts'
import type { Preview } from '#proof/logger/preview.ts'
import type { Proposal } from '#proof/logger/propose.ts'
import type { Log } from '#proof/logger/readLog.ts'

/** What the worker beside the page does with a logger's file. Plain data. */
export type LoggerAsk =
  /** Whether it is a logger's at all. */
  | { readonly kind: 'looks'; readonly text: string }
  | { readonly kind: 'propose'; readonly text: string; readonly answers: Answers }
  | { readonly kind: 'read'; readonly text: string; readonly mapping: Mapping }
  | {
      readonly kind: 'inspect'
      readonly text: string
      readonly mapping: Mapping
      readonly part: number
      /** Of water there [K]. */
      readonly boilingPoint: number
    }

export interface LoggerAnswers {
  readonly looks: boolean
  readonly propose: Outcome<Proposal>
  readonly read: { readonly log: Log; readonly preview: Preview }
  readonly inspect: readonly ChannelInspection[]
}
