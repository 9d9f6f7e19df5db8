import { type BurnLog, type Entry, isWeighing } from '#proof/trial/log.ts'
import type { WeighingFile } from '#proof/trial/logSchema.ts'

// What a log is, workshop and bench say alike.
export { type BurnLog, EMPTY_LOG, type Entry, entryOf, isWeighing, logOf } from '#proof/trial/log.ts'

/** What a new entry says; its id, time and count of edits come with it. */
export type EntryWords = DistributiveOmit<Entry, 'id' | 'at' | 'edit' | 'withdrawn'>
type DistributiveOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never

const byTime = (a: Entry, b: Entry): number => Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : 1)

/** What stands, the earliest first: nothing that was taken back. */
export const standing = ({ events, masses }: BurnLog): readonly Entry[] =>
  [...events, ...masses].filter(({ withdrawn }) => withdrawn !== true).sort(byTime)

/** The same entry with other words or another time. */
export const corrected = (entry: Entry, change: Partial<EntryWords> & { readonly at?: string }): Entry =>
  ({ ...entry, ...change, edit: (entry.edit ?? 0) + 1 }) as Entry

/** The same entry taken back. */
export const takenBack = (entry: Entry): Entry => ({ ...entry, edit: (entry.edit ?? 0) + 1, withdrawn: true })

/** When the fuel was lit [ms since 1970], or null. */
export const litAt = ({ events }: BurnLog): number | null => {
  const lit = events.find(({ event, withdrawn }) => event === 'lit' && withdrawn !== true)
  return lit === undefined ? null : Date.parse(lit.at)
}

const WEIGHED_WORDS: Readonly<Record<WeighingFile['of'], string>> = {
  stove: 'Stove',
  fuel: 'Fuel',
  pot: 'Pot with water',
  char: 'Char',
}

/** An entry in a maker's words: `Boil`, `Damper to 20°`, `Char: 31 g`. */
export const entryText = (entry: Entry): string => {
  const after = entry.text === undefined ? '' : ` – ${entry.text}`
  if (isWeighing(entry)) return `${WEIGHED_WORDS[entry.of]}: ${entry.mass}${after}`
  if (entry.event === 'note') return entry.text ?? 'Note'
  const what = `${entry.event[0]?.toUpperCase()}${entry.event.slice(1)}`
  if (entry.event === 'damper to') return `${what} ${(entry.turned ?? '').replace(/ ?deg$/, '°')}${after}`
  if (entry.event === 'refuel') return `${what}: ${entry.weight ?? ''}${after}`
  return `${what}${after}`
}
