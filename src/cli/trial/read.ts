import { BadInput, bad, good, type Outcome } from '#basis/problem.ts'
import { readTrialsJson, TRIALS_FORMAT } from '#proof/trial/exchange/bundle.ts'
import { readTrialsCsv } from '#proof/trial/exchange/records.ts'
import { isTrialsTable } from '#proof/trial/exchange/trialsIn.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { writtenLog } from '#proof/trial/log.ts'
import { readTrialDocument, type TrialDocument } from '#proof/trial/read.ts'
import { isOneBurn } from '#proof/trial/toldAgain.ts'
import { readJson } from '#stove/document/json.ts'
import type { Environment } from '../environment.ts'
import { inFile, problemOf, readFile } from '../input.ts'

/** A trial and the file it stood in. */
export interface FoundTrial extends TrialDocument {
  readonly path: string
}

const BRACES = /^\ufeff?\s*\{/

/** Readings of a logger are what is most often taken for a trial. */
const notATrial = (text: string): Outcome<never> =>
  bad({
    code: 'trial.neither',
    field: 'beginning of the file',
    value: text.trim().split('\n', 1)[0]?.trim().slice(0, 40) ?? '',
    allowed: 'a trial file, which begins with {, or a table of exported trials, which begins with "record"',
    fix: 'Readings of a logger are read with tinwright logger.',
  })

/** One trial file, or trials that were exported to one: CSV or JSON. */
const readAny = (text: string): Outcome<readonly TrialDocument[]> => {
  if (isTrialsTable(text)) return readTrialsCsv(text)
  if (!BRACES.test(text)) return notATrial(text)
  const json = readJson(text)
  const value = json.ok ? json.value : null
  if (typeof value === 'object' && value !== null && 'format' in value && value.format === TRIALS_FORMAT)
    return readTrialsJson(text)
  const one = readTrialDocument(text)
  return one.ok ? good([one.value]) : one
}

/** The same burn in other words: its log has an entry that is known already. */
const toldBefore = ({ file }: TrialDocument, seen: Iterable<FoundTrial>): FoundTrial | null => {
  const log = writtenLog(file)
  for (const before of seen) if (isOneBurn(writtenLog(before.file), log)) return before
  return null
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
    const before = seen.get(text) ?? toldBefore(one, seen.values())
    if (before !== null)
      throw new BadInput([
        problemOf(
          'trial.twice',
          one.path,
          `“${one.trial.name}”, which ${before.path === one.path ? 'stands there twice' : `${before.path} has as well`}${seen.has(text) ? '' : ', by the entries of its log'}`,
          'every burn once',
          'Leave one of the two out: a burn that counts twice makes luck look like proof.',
        ),
      ])
    seen.set(text, one)
  }
  return found
}
