import { problemSentence } from '#basis/problem.ts'
import { readJson } from '#stove/document/json.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'

/** A text of the workshop as a stove file under its document's name, or why it does not read. */
export const stoveFileOf = (
  text: string,
  name: string,
): { readonly file: StoveFile } | { readonly sentence: string } => {
  const read = readStoveDocument(text)
  return read.ok
    ? { file: { ...read.value.file, name } }
    : { sentence: `This stove does not read.\n${read.problems.map(problemSentence).join('\n')}` }
}

/** The same for a text that may be in the middle of an edit: its file, whether the stove reads or not. */
export const looseFileOf = (text: string, name: string): StoveFile | null => {
  const json = readJson(text)
  return json.ok ? ({ ...(json.value as object), name } as StoveFile) : null
}
