import type { EventFile, WeighingFile } from '#proof/trial/logSchema.ts'
/** One line of a burn's log, as a trial file writes it: something that happened, or something that was weighed. */
export type Entry = EventFile | WeighingFile
export declare const isWeighing: (entry: Entry) => entry is WeighingFile
/** What a new entry says; its id, time and count of edits come with it. */
export type EntryWords = DistributiveOmit<Entry, 'id' | 'at' | 'edit' | 'withdrawn'>
type DistributiveOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never
export interface BurnLog {
  readonly events: readonly EventFile[]
  readonly masses: readonly WeighingFile[]
}
export declare const EMPTY_LOG: BurnLog
/** Sorts entries of several phones into one log, every entry once, as `mergeLogs` says. */
export declare const logOf: (entries: readonly Entry[], before?: BurnLog) => BurnLog
/** What stands, the earliest first: nothing that was taken back. */
export declare const standing: ({ events, masses }: BurnLog) => readonly Entry[]
/** The same entry with other words or another time. */
export declare const corrected: (
  entry: Entry,
  change: Partial<EntryWords> & {
    readonly at?: string
  },
) => Entry
/** The same entry taken back. */
export declare const takenBack: (entry: Entry) => Entry
/** When the fuel was lit [ms since 1970], or null. */
export declare const litAt: ({ events }: BurnLog) => number | null
/** An entry in a maker's words: `Boil`, `Damper to 20 deg`, `Char: 31 g`. */
export declare const entryText: (entry: Entry) => string
