import { bad, good, type Outcome } from '#basis/problem.ts'
import { checkFormat } from '#stove/document/formatLine.ts'
import { type JsonValue, readJson } from '#stove/document/json.ts'
import { schemaProblems } from '#stove/document/schemaProblems.ts'
import { mergeLogs } from './mergeLogs.ts'
import type { Trial, TrialEvent, TrialWeighing } from './model.ts'
import { TRIAL_FORMAT, type TrialFile, type TrialRead, trialSchema } from './schema.ts'
import { togetherProblems } from './together.ts'

/** A document and the trial it describes. */
export interface TrialDocument {
  readonly file: TrialFile
  readonly trial: Trial
}

interface Entry {
  readonly id: string
  readonly at: number
  readonly edit?: number | undefined
  readonly withdrawn?: boolean | undefined
}

/** Entries that hold, each once, in order of time. */
const holding = <T extends Entry>(entries: readonly T[] | undefined): readonly T[] =>
  mergeLogs(
    [(entries ?? []).map((entry) => ({ ...entry, at: String(entry.at), entry }))],
    ({ entry }) => entry.at,
  )
    .map(({ entry }) => entry)
    .filter(({ withdrawn }) => withdrawn !== true)

const resolve = (read: TrialRead): Trial => {
  const { events: noted, masses, phases, lit: said, format: _, $schema: __, ...rest } = read
  const events = holding(noted)
  const lit = said ?? events.find(({ event }) => event === 'lit')?.at ?? null
  const after = (at: number): number | null => (lit === null ? null : at - lit)
  const timed: readonly TrialEvent[] = events.map((one) => ({ ...one, after: after(one.at) }))
  const weighings: readonly TrialWeighing[] = holding(masses).map((one) => ({ ...one, after: after(one.at) }))
  return {
    ...rest,
    block: read.block ?? read.day,
    lit,
    events: timed,
    masses: weighings,
    phases: phases.map((phase) => ({
      ...phase,
      char: phase.char ?? null,
      boil:
        phase.boil ??
        timed.find(
          ({ event, after: time }) =>
            event === 'boil' && time !== null && time > phase.from.at && time <= phase.to.at,
        )?.after ??
        null,
    })),
  }
}

/** Reads a trial that is in memory already. Problems as of `readTrial`. */
export const readTrialValue = (json: JsonValue): Outcome<TrialDocument> => {
  const format = checkFormat(json, TRIAL_FORMAT)
  if (!format.ok) return format
  const parsed = trialSchema.safeParse(json)
  if (!parsed.success) return bad(...schemaProblems(parsed.error.issues, json))
  const problems = togetherProblems(parsed.data, { file: json, path: [] })
  return problems.length > 0
    ? bad(...problems)
    : good({ file: json as unknown as TrialFile, trial: resolve(parsed.data) })
}

/**
 * Reads a trial file (`tinwright/trial@1`) into SI, and keeps what was written beside it. All problems of one stage
 * are collected: those of the JSON text, then of each field by itself, then of what does not go together.
 */
export const readTrialDocument = (text: string): Outcome<TrialDocument> => {
  const json = readJson(text)
  return json.ok ? readTrialValue(json.value) : json
}

/**
 * Reads a trial file (`tinwright/trial@1`), SI units. Problems name field, value, what is allowed and what to do.
 */
export const readTrial = (text: string): Outcome<Trial> => {
  const read = readTrialDocument(text)
  return read.ok ? good(read.value.trial) : read
}
