import { formatStoveFile } from '#stove/document/format.ts'
import { readStoveDocument } from '#stove/document/read.ts'

/**
 * A stove's text as it leaves the workshop: under the name that the stove bears here. Exactly as written where it bears that
 * already, or where it cannot: a text that does not read, a name that no stove file may have.
 */
export const stoveTextUnder = (name: string, text: string): string => {
  const read = readStoveDocument(text)
  if (!read.ok || read.value.file.name === name) return text
  const renamed = formatStoveFile({ ...read.value.file, name })
  return readStoveDocument(renamed).ok ? renamed : text
}
