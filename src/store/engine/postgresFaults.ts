import type { Refusal } from '../answer.ts'

/** Classes and codes of SQLSTATE. [bib:postgres-errors] */
const BUSY = new Set(['55P03', '57014', '40001', '40P01'])
const FULL = new Set(['53100', '53200'])
const READ_ONLY = new Set(['25006', '42501'])
const REFUSED_ENTRY = new Set(['28000', '28P01', '3D000'])
const GONE = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOENT',
  'ENOTFOUND',
  'EPIPE',
  'ETIMEDOUT',
  'EHOSTUNREACH',
])

/** What pg says without a code when a connection ends or does not come about. */
const GONE_SAID = /connection terminated|timeout exceeded when trying to connect|not queryable/i

/** What an error of PostgreSQL means to a maker, or null when it is none of these. */
export const postgresRefusal = (place: string, error: unknown): Refusal | null => {
  if (!(error instanceof Error)) return null
  const code = String((error as { readonly code?: unknown }).code ?? '')
  const said = error.message
  if (BUSY.has(code))
    return {
      code: 'busy',
      sentence: `Someone else is writing to the workshop ${place} and did not finish in time. Nothing was changed. Try again in a moment.`,
    }
  if (FULL.has(code) || code === '53300')
    return {
      code: code === '53300' ? 'busy' : 'full',
      sentence: `The server of the workshop ${place} has no room for this (${said}). This change was not kept; all before it is.`,
    }
  if (READ_ONLY.has(code))
    return {
      code: 'read-only',
      sentence: `The server lets this user only read the workshop ${place} (${said}). Nothing was changed.`,
    }
  if (REFUSED_ENTRY.has(code))
    return {
      code: 'unreachable',
      sentence: `The server does not let this user in to the workshop ${place} (${said}). Look at TINWRIGHT_DB.`,
    }
  if (code.startsWith('08') || code.startsWith('57P') || GONE.has(code) || GONE_SAID.test(said))
    return {
      code: 'unreachable',
      sentence: `The server of the workshop ${place} does not answer (${said}). It is not certain whether the last change was kept: try it again, it will not be done twice.`,
    }
  if (code.startsWith('XX'))
    return {
      code: 'damaged',
      sentence: `The server says that the workshop ${place} is damaged: ${said}. Nothing was changed.`,
    }
  return null
}
