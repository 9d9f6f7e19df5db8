import type { JsonValue } from '#stove/document/json.ts'
import { type BurnLog, logOf, writtenLog } from './log.ts'

/** A trial's text as it stands in a workshop: half of it may still be to say. */
export type TrialWords = { readonly [key: string]: JsonValue }

/** A burn that is here already, as a file tells it again. */
export interface ToldAgain {
  /** The trial's own words with what was new in them; null: there was nothing new. */
  readonly words: TrialWords | null
  /** Entries of the log that were new, or had gone on. */
  readonly entries: number
  /** Keys of the file that were told here for the first time. */
  readonly filled: readonly string[]
  /** Keys that both tell, and not alike: those here stay. */
  readonly apart: readonly string[]
}

const entriesOf = ({ events, masses }: BurnLog) => [...events, ...masses]

/**
 * Whether two logs tell of one burn: they share an entry, by its id, at the same moment. Shared ids at other moments are a
 * file that somebody copied for the next burn.
 */
export const isOneBurn = (a: BurnLog, b: BurnLog): boolean => {
  const known = new Map(entriesOf(a).map(({ id, at }) => [id, Date.parse(at)]))
  return entriesOf(b).some(({ id, at }) => known.get(id) === Date.parse(at))
}

type Leaves = ReadonlyMap<string, JsonValue>

/** Every value of a text by where it stands: `fuel.moisture.before`, `phases.0.from.at`. */
const leavesOf = (value: unknown, path: readonly string[] = []): Leaves =>
  typeof value !== 'object' || value === null
    ? new Map(value === undefined ? [] : [[path.join('.'), value as JsonValue]])
    : new Map(Object.entries(value).flatMap(([key, inner]) => [...leavesOf(inner, [...path, key])]))

const sorted = (leaves: Leaves): string =>
  JSON.stringify([...leaves].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))

/** Everything but the log, and what says nothing of the burn. */
const ownWords = ({ $schema: _, events: __, masses: ___, ...rest }: TrialWords): Leaves => leavesOf(rest)

/** What hangs together: half of one telling beside half of another would be neither. */
const WHOLE: readonly RegExp[] = [
  /^fuel\.(?:moisture|heatingValue|charHeatingValue)/,
  /^kindling/,
  /^(?:wentWrong|photos)/,
]
const SITE = /^weather\.(?:pressure|altitude|boilingPoint)$/

const unitOf = (key: string, here: Leaves, came: Leaves): string => {
  if (SITE.test(key)) return 'weather'
  const [, phase] = /^(phases\.\d+)\./.exec(key) ?? []
  // Another kind of phase in its place is another phase.
  if (phase !== undefined && here.get(`${phase}.phase`) !== came.get(`${phase}.phase`)) return phase
  return WHOLE.map((form) => form.exec(key)?.[0]).find((found) => found !== undefined) ?? key
}

/** Leaves of a file that are new here, and the units that both tell, and not alike. */
const sifted = (here: Leaves, came: Leaves) => {
  const units = new Set([...came.keys()].map((key) => unitOf(key, here, came)))
  const fresh: [string, JsonValue][] = []
  const apart: string[] = []
  for (const unit of units) {
    const of = (leaves: Leaves) => [...leaves].filter(([key]) => unitOf(key, here, came) === unit)
    if (of(here).every(([key, value]) => came.get(key) === value))
      fresh.push(...of(came).filter(([key]) => !here.has(key)))
    else if (of(came).some(([key, value]) => here.get(key) !== value)) apart.push(unit)
  }
  return { fresh, apart }
}

/** Puts a value where it belongs; what is not there yet on the way is made. */
const withLeaf = (value: JsonValue | undefined, path: readonly string[], leaf: JsonValue): JsonValue => {
  const [key, ...rest] = path
  if (key === undefined) return leaf
  if (Array.isArray(value) || (value === undefined && /^\d+$/.test(key))) {
    const list = [...((value as readonly JsonValue[] | undefined) ?? [])]
    list[Number(key)] = withLeaf(list[Number(key)], rest, leaf)
    return list
  }
  const group = (typeof value === 'object' && value !== null ? value : {}) as TrialWords
  return { ...group, [key]: withLeaf(group[key], rest, leaf) }
}

/**
 * What a file adds to a burn that is here. `here`: its words; `logged`: its whole log, with what phones noted beside them;
 * `before`: its words as they once were. Entries go by their ids, as between phones. Words that only one of both tells are
 * taken; where both tell and not alike, those here stay, and it is said, unless the file is but an older telling.
 */
export const toldAgain = (
  here: TrialWords,
  logged: BurnLog,
  came: TrialWords,
  before: readonly TrialWords[] = [],
): ToldAgain => {
  const theirs = entriesOf(writtenLog(came))
  const known = new Map(entriesOf(logged).map((entry) => [entry.id, sorted(leavesOf(entry))]))
  const entries = entriesOf(logOf(theirs, logged)).filter(
    (entry) => known.get(entry.id) !== sorted(leavesOf(entry)),
  ).length
  const then = ownWords(came)
  const older = before.some((one) => sorted(ownWords(one)) === sorted(then))
  const { fresh, apart } = older ? { fresh: [], apart: [] } : sifted(ownWords(here), then)
  const filled = fresh.map(([key]) => key)
  if (entries === 0 && filled.length === 0) return { words: null, entries, filled, apart }
  const told = fresh.reduce<JsonValue>((words, [key, leaf]) => withLeaf(words, key.split('.'), leaf), here)
  const { events, masses } = logOf(theirs, writtenLog(here))
  const log = { ...(events.length === 0 ? {} : { events }), ...(masses.length === 0 ? {} : { masses }) }
  return { words: { ...(told as TrialWords), ...(log as unknown as TrialWords) }, entries, filled, apart }
}
