import { strToU8 } from 'fflate'
import { bad, good, type Outcome } from '#basis/problem.ts'

/**
 * Words and bytes in one body: the length of the words [bytes] as four bytes, the most significant first;
 * the words as JSON in UTF-8; the bytes. A type of our own, which no form of a foreign page can send
 * without asking first.
 */
export const FRAME_TYPE = 'application/vnd.tinwright.framed'

const LENGTH = 4
/** Words of an upload are a few hundred bytes, a long note a few thousand. [bytes] */
export const MAX_FRAME_HEAD = 32_000

/** What stands before the bytes: `new Blob([frameHead(words), photo])`. */
export const frameHead = (words: unknown): Uint8Array<ArrayBuffer> => {
  const json = strToU8(JSON.stringify(words))
  const head = new Uint8Array(LENGTH + json.length)
  new DataView(head.buffer).setUint32(0, json.length)
  head.set(json, LENGTH)
  return head
}

export interface Framed {
  /** JSON in UTF-8, as it came. */
  readonly words: Uint8Array
  /** A view, not a copy. */
  readonly bytes: Uint8Array
}

/** Takes a body apart. Problems: `frame.broken`. */
export const readFrame = (body: Uint8Array): Outcome<Framed> => {
  const broken = (value: string, allowed: string): Outcome<never> =>
    bad({ code: 'frame.broken', field: 'the upload', value, allowed, fix: 'Send it again.' })
  const whole = 'a length of four bytes, so many bytes of words, and the file behind them'
  if (body.length < LENGTH) return broken(`${body.length} bytes`, whole)
  const length = new DataView(body.buffer, body.byteOffset).getUint32(0)
  if (length > MAX_FRAME_HEAD) return broken(`${length} bytes of words`, `at most ${MAX_FRAME_HEAD} bytes`)
  if (LENGTH + length > body.length) return broken(`cut short after ${body.length} bytes`, whole)
  const end = LENGTH + length
  return good({ words: body.subarray(LENGTH, end), bytes: body.subarray(end) })
}
