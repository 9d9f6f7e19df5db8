import type { Refusal } from '../answer.ts'

/** Primary result codes of SQLite; the rest of an extended code says more than a maker needs. [bib:sqlite-codes] */
const BUSY = 5
const LOCKED = 6
const READONLY = 8
const IOERR = 10
const CORRUPT = 11
const FULL = 13
const CANTOPEN = 14
const NOTADB = 26

/** Primary result code, or null when the error is none of SQLite's. */
const resultCode = (error: unknown): number | null => {
  const code = (error as { readonly errcode?: unknown } | null)?.errcode
  return typeof code === 'number' ? code & 0xff : null
}

export const isBusy = (error: unknown): boolean => {
  const code = resultCode(error)
  return code === BUSY || code === LOCKED
}

export const isDamage = (error: unknown): boolean => {
  const code = resultCode(error)
  return code === CORRUPT || code === NOTADB
}

export const damagedSentence = (place: string, what: string): string =>
  `The workshop ${place} is damaged: ${what}. Nothing was changed. Keep the file as it is, and go on with a copy of it from before or with an archive.`

/** What an error of SQLite means to a maker, or null when it is none of these. */
export const sqliteRefusal = (place: string, error: unknown): Refusal | null => {
  const said = error instanceof Error ? error.message : String(error)
  switch (resultCode(error)) {
    case BUSY:
    case LOCKED:
      return {
        code: 'busy',
        sentence: `Another program is writing to the workshop ${place} and did not finish in time. Nothing was changed. Try again in a moment; if it stays so, close the other program.`,
      }
    case READONLY:
      return { code: 'read-only', sentence: readOnlySentence(place) }
    case CORRUPT:
    case NOTADB:
      return { code: 'damaged', sentence: damagedSentence(place, said) }
    case FULL:
      return {
        code: 'full',
        sentence: `There is no room left where the workshop ${place} lies. This change was not kept; all before it is. Make room and try again.`,
      }
    case CANTOPEN:
      return {
        code: 'read-only',
        sentence: `The workshop ${place} cannot be opened for writing (${said}). Nothing was changed. Look at the folder and at its permissions.`,
      }
    case IOERR:
      return {
        code: 'damaged',
        sentence: `The drive that holds the workshop ${place} does not read or write (${said}). This change was not kept. Copy the file to another drive.`,
      }
    default:
      return null
  }
}

export const readOnlySentence = (place: string): string =>
  `The workshop ${place} may be read here, but nothing can be written beside it. Nothing was changed. Look at the permissions of the file and of its folder, or copy it to a place of your own.`
