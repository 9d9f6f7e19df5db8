import type { TrialEvent } from '#wire/trials.ts'
import { type Cell } from '../cell/cell.ts'
import type { BurnStore, KeptBurn } from './burnStore.ts'
import { type Line, type Visit } from './courier.ts'
import { type BurnLog, type Entry, type EntryWords } from './entry.ts'
export interface BurnState {
  /** Read from this device. */
  readonly ready: boolean
  readonly name: string
  /** The trial's text in the workshop; empty: never seen here. */
  readonly text: string
  readonly log: BurnLog
  /** Entries that stand. */
  readonly count: number
  /** Entries, corrections and photos that the workshop does not have yet. */
  readonly waiting: number
  readonly visit: Visit | null
  /** To add to this device's clock [ms]. */
  readonly shift: number
  /** This device could not keep something: a sentence. */
  readonly trouble: string | null
}
/** The log of one burn on this device, whoever else writes in it. */
export interface BurnBook {
  readonly trial: string
  readonly state: Cell<BurnState>
  /** Notes what happened, now or at a time by this device's clock [ms since 1970]. */
  readonly note: (words: EntryWords, at?: number) => Promise<Entry | null>
  readonly correct: (
    entry: Entry,
    change: Partial<EntryWords> & {
      readonly at?: string
    },
  ) => Promise<void>
  readonly takeBack: (entry: Entry) => Promise<void>
  readonly photo: (name: string, bytes: Blob) => Promise<void>
  /** Brings what is waiting to the workshop and asks for news. */
  readonly sync: () => Promise<void>
  /** Reads again what another tab wrote. */
  readonly reload: () => Promise<void>
}
export interface BookTools {
  readonly store: BurnStore
  readonly line: Line
  /** This device, in the workshop's eyes. */
  readonly client: string
  readonly now: () => number
  readonly newId: () => string
  /** Tells other tabs of this device. */
  readonly tell: () => void
}
/** What an event of the workshop says, or null where it is nothing of ours. */
export declare const entryOf: ({ body }: Pick<TrialEvent, 'body'>) => Entry | null
/** The log that follows from what is kept: the trial's own, what was heard, what was noted here. */
export declare const logIn: ({ burn, heard, noted }: Pick<KeptBurn, 'burn' | 'heard' | 'noted'>) => BurnLog
export declare const openBurnBook: (trial: string, tools: BookTools) => BurnBook
