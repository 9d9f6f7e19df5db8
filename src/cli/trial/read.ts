import { BadInput, good, type Outcome } from '#basis/problem.ts'
import { readTrialsJson, TRIALS_FORMAT } from '#proof/trial/exchange/bundle.ts'
import { readTrialsCsv } from '#proof/trial/exchange/records.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { readTrialDocument, type TrialDocument } from '#proof/trial/read.ts'
import { readJson } from '#stove/document/json.ts'
import type { Environment } from '../environment.ts'
import { inFile, problemOf, readFile } from '../input.ts'

/** A trial and the file it stood in. */
export interface FoundTrial extends TrialDocument {
  readonly path: string
}

const EXPORTED_TABLE = /^\ufeff?"?record"?[,;\t]/

/** One trial file, or trials that were exported to one: CSV or JSON. */
const readAny = (text: string): Outcome<readonly TrialDocument[]> => {
  if (EXPORTED_TABLE.test(text)) return readTrialsCsv(text)
  const json = readJson(text)
  const value = json.ok ? json.value : null
  if (typeof value === 'object' && value !== null && 'format' in value && value.format === TRIALS_FORMAT)
    return readTrialsJson(text)
  const one = readTrialDocument(text)
  return one.ok ? good([one.value]) : one
}

/**
 * Every trial of some files.
 * @throws BadInput that names the file; also for one burn that comes twice, which would count twice.
 */
export const trialsFrom = (env: Environment, paths: readonly string[]): readonly FoundTrial[] => {
  const found = paths.flatMap((path) =>
    inFile(path, readAny(readFile(env, path, 'trial file'))).map((one): FoundTrial => ({ ...one, path })),
  )
  const seen = new Map<string, FoundTrial>()
  for (const one of found) {
    const { $schema: _, ...rest } = one.file
    const text = formatTrialFile(rest)
    const before = seen.get(text)
    if (before !== undefined)
      throw new BadInput([
        problemOf(
          'trial.twice',
          one.path,
          `“${one.trial.name}”, which ${before.path === one.path ? 'stands there twice' : `${before.path} has as well`}`,
          'every burn once',
          'Leave one of the two out: a burn that counts twice makes luck look like proof.',
        ),
      ])
    seen.set(text, one)
  }
  return found
}
