import { readInstant } from './instant.ts'
import type { EventFile, WeighingFile } from './logSchema.ts'
import { mergeEvents, mergeWeighings } from './mergeTrials.ts'

/** One line of a burn's log, as a trial file writes it: something that happened, or something that was weighed. */
export type Entry = EventFile | WeighingFile

export const isWeighing = (entry: Entry): entry is WeighingFile => 'of' in entry

export interface BurnLog {
  readonly events: readonly EventFile[]
  readonly masses: readonly WeighingFile[]
}

export const EMPTY_LOG: BurnLog = { events: [], masses: [] }

/** Sorts entries of several phones into one log, every entry once, as `mergeLogs` says. */
export const logOf = (entries: readonly Entry[], before: BurnLog = EMPTY_LOG): BurnLog => ({
  events: mergeEvents(
    before.events,
    entries.filter((entry): entry is EventFile => !isWeighing(entry)),
  ),
  masses: mergeWeighings(before.masses, entries.filter(isWeighing)),
})

const isEntry = (said: unknown): said is Entry =>
  typeof said === 'object' &&
  said !== null &&
  'id' in said &&
  'at' in said &&
  ('event' in said || 'of' in said) &&
  readInstant(said.at).ok

/** What an event of the workshop says, or null where it is nothing of ours. */
export const entryOf = ({ body }: { readonly body: string }): Entry | null => {
  try {
    const said: unknown = JSON.parse(body)
    return isEntry(said) ? said : null
  } catch {
    return null
  }
}

const entriesIn = (list: unknown): readonly Entry[] => (Array.isArray(list) ? list.filter(isEntry) : [])

/** Entries in a trial's own text: those of a trial that came as a file. */
export const writtenLog = (trial: unknown): BurnLog => {
  const { events, masses } = (typeof trial === 'object' && trial !== null ? trial : {}) as Record<
    string,
    unknown
  >
  return {
    events: entriesIn(events).filter((entry): entry is EventFile => !isWeighing(entry)),
    masses: entriesIn(masses).filter(isWeighing),
  }
}
