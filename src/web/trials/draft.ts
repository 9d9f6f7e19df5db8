import type { Problem } from '#basis/problem.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { isStillToSay } from '#proof/trial/halfTold.ts'
import type { Trial } from '#proof/trial/model.ts'
import { readTrialValue } from '#proof/trial/read.ts'
import { TRIAL_FORMAT, type TrialFile } from '#proof/trial/schema.ts'
import { withLog } from '#proof/trial/withLog.ts'
import type { JsonValue } from '#stove/document/json.ts'
import type { BurnLog } from '../atStove/entry.ts'

/** A trial as far as it has been told: while it burns, half of it is still to say. */
export type Draft = { readonly [key: string]: JsonValue }

export type Path = readonly (string | number)[]

/** Groups that are always there, so that what is missing is asked for field by field. */
const GROUPS: Draft = {
  stove: {},
  fuel: { moisture: {} },
  weather: {},
  pot: {},
  instruments: { scale: {}, thermometer: {}, clock: {} },
  phases: [{ phase: 'high power', from: {}, to: {} }],
}

const isGroup = (value: unknown): value is Draft =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const withGroups = (value: JsonValue | undefined, groups: JsonValue): JsonValue => {
  if (!isGroup(groups)) return value ?? groups
  if (value !== undefined && !isGroup(value)) return value
  const all = { ...groups, ...value }
  return Object.fromEntries(
    Object.keys(all).map((key) => [
      key,
      groups[key] === undefined
        ? (all[key] as JsonValue)
        : withGroups(value?.[key], groups[key] as JsonValue),
    ]),
  )
}

/** Reads what the workshop keeps; null for a text that is no trial's. */
export const draftFrom = (text: string): Draft | null => {
  try {
    const said: unknown = JSON.parse(text)
    if (!isGroup(said) || said.format !== TRIAL_FORMAT) return null
    return withGroups(said, GROUPS) as Draft
  } catch {
    return null
  }
}

export const emptyDraft = (): Draft => withGroups({ format: TRIAL_FORMAT }, GROUPS) as Draft

/** As the workshop keeps it: in the order of the schema. */
export const textOf = (draft: Draft): string => formatTrialFile(draft as unknown as TrialFile)

/** What stands at a place; undefined where nothing does. */
export const at = (draft: JsonValue | undefined, path: Path): JsonValue | undefined =>
  path.reduce<JsonValue | undefined>((here, step) => {
    if (Array.isArray(here)) return (here as readonly JsonValue[])[step as number]
    return isGroup(here) ? here[step] : undefined
  }, draft)

/** The same with something else at a place; undefined takes it out. */
const put = (value: JsonValue | undefined, path: Path, what: JsonValue | undefined): JsonValue => {
  const [step, ...rest] = path
  if (step === undefined) return what ?? null
  if (typeof step === 'number') {
    const list = Array.isArray(value) ? [...(value as readonly JsonValue[])] : []
    if (rest.length === 0 && what === undefined) list.splice(step, 1)
    else list[step] = put(list[step], rest, what)
    return list
  }
  const group = isGroup(value) ? value : {}
  if (rest.length === 0 && what === undefined)
    return Object.fromEntries(Object.entries(group).filter(([key]) => key !== step))
  return { ...group, [step]: put(group[step], rest, what) }
}

/** As `put`, on a whole trial. */
export const changed = (draft: Draft, path: Path, what: JsonValue | undefined): Draft =>
  put(draft, path, what) as Draft

/** The path as problems name it: `phases[0].from.fuel`. */
export const fieldOf = (path: Path): string =>
  path.map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`)).join('')

export interface TrialSoFar {
  /** Null while something is missing or wrong. */
  readonly trial: Trial | null
  /** Nothing stands there yet. */
  readonly missing: readonly Problem[]
  /** What stands there will not do. */
  readonly wrong: readonly Problem[]
}

/** What is judged only once every blank is filled, asked for at once all the same. */
const askedLater = (draft: Draft): readonly Problem[] => {
  const missing = (field: string, allowed: string, fix: string): Problem => ({
    code: 'key.missing',
    field,
    value: '',
    allowed,
    fix,
  })
  const told = ['pressure', 'altitude', 'boilingPoint'].some(
    (key) => at(draft, ['weather', key]) !== undefined,
  )
  const meter =
    at(draft, ['fuel', 'moisture', 'meter']) !== undefined &&
    at(draft, ['instruments', 'moistureMeter', 'accuracy']) === undefined
  return [
    ...(told ? [] : [missing('weather.pressure', 'a pressure, an altitude or a boiling point', 'Say one.')]),
    ...(meter ? [missing('instruments.moistureMeter', 'an accuracy such as 2 %', 'Say it.')] : []),
  ]
}

/** The trial with its log, read as a trial file is. */
export const trialSoFar = (draft: Draft, { events, masses }: BurnLog): TrialSoFar => {
  const read = readTrialValue({ ...draft, events, masses } as unknown as JsonValue)
  if (read.ok) return { trial: read.value.trial, missing: [], wrong: [] }
  const missing = read.problems.filter(isStillToSay)
  const known = new Set(missing.map(({ field }) => field))
  return {
    trial: null,
    missing: [...missing, ...askedLater(draft).filter(({ field }) => !known.has(field))],
    wrong: read.problems.filter((problem) => !isStillToSay(problem)),
  }
}

/** The whole file, log and all, as it leaves the house. */
export const wholeFile: (draft: Draft, log: BurnLog) => TrialFile = withLog
