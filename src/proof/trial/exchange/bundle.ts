import * as z from 'zod'
import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import { strict, words } from '#stove/document/fields.ts'
import { formatted } from '#stove/document/format.ts'
import { checkFormat } from '#stove/document/formatLine.ts'
import { type JsonValue, readJson } from '#stove/document/json.ts'
import { readTrialValue, type TrialDocument } from '../read.ts'
import { type TrialFile, trialSchema } from '../schema.ts'

export const TRIALS_FORMAT = 'tinwright/trials@1'

/** Several trial files in one. */
export const trialsSchema = strict({
  $schema: words(200, 'Where an editor finds the JSON Schema of this file.').optional(),
  format: z.literal(TRIALS_FORMAT).meta({ description: 'Kind and version of this file.' }),
  trials: z.array(trialSchema).min(1).max(10_000).meta({ description: 'Whole trial files.' }),
}).meta({ title: 'Tinwright trials', description: 'Several burns that were measured, in one file.' })

/** Trial files as one JSON file. */
export const trialsJson = (files: readonly TrialFile[]): string =>
  formatted({ format: TRIALS_FORMAT, trials: files } as unknown as JsonValue, trialsSchema)

const within = (problem: Problem, i: number): Problem => ({
  ...problem,
  field: problem.field === '' ? `trials.${i}` : `trials.${i}.${problem.field}`,
})

/** Reads trials from one. Problems as of a single trial file, with their place in the list before the field. */
export const readTrialsJson = (text: string): Outcome<readonly TrialDocument[]> => {
  const json = readJson(text)
  if (!json.ok) return json
  const format = checkFormat(json.value, TRIALS_FORMAT)
  if (!format.ok) return format
  const { trials, ...rest } = json.value as { readonly [key: string]: JsonValue }
  const unknown = Object.keys(rest).filter((key) => key !== '$schema' && key !== 'format')
  if (unknown.length > 0 || !Array.isArray(trials) || trials.length === 0)
    return bad({
      code: 'trials.form',
      field: unknown[0] ?? 'trials',
      value: shown(unknown.length > 0 ? rest[unknown[0] as string] : trials),
      allowed: '"trials": a list of whole trial files, and no other key',
      fix: 'Export the trials again, or put the list there.',
    })
  const read = trials.map(readTrialValue)
  const problems = read.flatMap((one, i) => (one.ok ? [] : one.problems.map((problem) => within(problem, i))))
  return problems.length > 0 ? bad(...problems) : good(read.flatMap((one) => (one.ok ? [one.value] : [])))
}
