import type { Problem } from '#basis/problem.ts'
import { readJson } from '#stove/document/json.ts'
import { readTrialDocument } from './read.ts'
import { TRIAL_FORMAT, type TrialFile } from './schema.ts'

/** Whether a problem of a trial's text is that nothing stands there yet. */
export const isStillToSay = ({ value, code }: Problem): boolean =>
  value === '' || code === 'key.missing' || value === 'empty braces'

/** A burn as far as it was told when it left a bench. */
export interface HalfTold {
  /** Its name and its stove are told; of the rest, whatever is. */
  readonly file: TrialFile
  /** How many things are still to say. */
  readonly missing: number
}

const said = (value: unknown): boolean => typeof value === 'string' && value !== ''

/**
 * A trial file in which nothing is wrong, but something is still to say: while a burn goes on, half of it is. Null for a text
 * that is whole, or wrong, or does not tell its name and its stove.
 */
export const halfTold = (text: string): HalfTold | null => {
  const read = readTrialDocument(text)
  if (read.ok || !read.problems.every(isStillToSay)) return null
  const json = readJson(text)
  if (!json.ok) return null
  const file = json.value as unknown as TrialFile
  return file.format === TRIAL_FORMAT && said(file.name) && said(file.stove?.name)
    ? { file, missing: read.problems.length }
    : null
}
