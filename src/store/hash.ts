import { createHash } from 'node:crypto'

/** SHA-256, hexadecimal. Text as UTF-8. */
export const sha256 = (content: string | Uint8Array): string =>
  createHash('sha256').update(content).digest('hex')

/**
 * An id that follows from another and a word: what one act makes several of. The same act asked again
 * makes the same ids.
 */
export const derivedId = (...from: readonly string[]): string => sha256(from.join('\n')).slice(0, 32)
