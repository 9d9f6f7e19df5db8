import type { Answer } from '#wire/answer.ts'
import type { DocumentHead, OpenDocument } from '#wire/documents.ts'
import type { EventBatch, TrialEvent } from '#wire/trials.ts'
import type { BurnStore, KeptPhoto } from './burnStore.ts'
/** What a burn needs of the workshop. */
export interface Line {
  readonly open: (document: string) => Promise<Answer<OpenDocument>>
  readonly logEvents: (batch: EventBatch) => Promise<Answer<readonly TrialEvent[]>>
  readonly events: (trial: string, since: number) => Promise<Answer<readonly TrialEvent[]>>
  readonly attach: (photo: KeptPhoto) => Promise<Answer<DocumentHead>>
  /** How far the workshop's clock is ahead of this one [ms], or null where it does not answer. */
  readonly ahead: () => Promise<number | null>
}
/** How the last visit went. */
export type Visit =
  | {
      readonly kind: 'been there'
    }
  | {
      readonly kind: 'out of reach'
    }
  | {
      readonly kind: 'refused'
      readonly sentence: string
    }
/**
 * One visit to the workshop: how its clock stands, what is new there, and everything that it does not have yet. All of
 * it can be done again at any time, from any point at which it was broken off: the workshop keeps an event once.
 */
export declare const visit: (
  trial: string,
  client: string,
  store: BurnStore,
  line: Line,
  now: () => number,
) => Promise<Visit>
