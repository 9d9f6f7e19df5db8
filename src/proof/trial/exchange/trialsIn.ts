import { good, type Outcome } from '#basis/problem.ts'
import { formatTrialFile } from '../format.ts'
import { readTrialDocument, type TrialDocument } from '../read.ts'
import type { TrialFile } from '../schema.ts'
import { readTrialsJson, TRIALS_FORMAT } from './bundle.ts'
import { readTrialsCsv } from './records.ts'

/** The table of trials, by its first cell; with the mark that spreadsheets put before a text in UTF-8. */
export const isTrialsTable = (text: string): boolean => /^\ufeff?"?record"?[,;\t]/.test(text)

/** A trial that came in, and its text as a file of its own: as written where it came as one. */
export interface TrialIn {
  readonly file: TrialFile
  readonly text: string
}

const apart = (read: Outcome<readonly TrialDocument[]>): Outcome<readonly TrialIn[]> =>
  read.ok ? good(read.value.map(({ file }) => ({ file, text: formatTrialFile(file) }))) : read

/** One trial, a bundle of them, or a table: by what the file says, not by its name. */
export const trialsIn = (text: string): Outcome<readonly TrialIn[]> => {
  if (!text.trimStart().startsWith('{')) return apart(readTrialsCsv(text))
  if (text.includes(`"${TRIALS_FORMAT}"`)) return apart(readTrialsJson(text))
  const read = readTrialDocument(text)
  return read.ok ? good([{ file: read.value.file, text }]) : read
}
