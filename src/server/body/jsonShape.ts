import { MAX_BODY_DEPTH, MAX_BODY_PARTS } from '#wire/limits.ts'

const QUOTE = 0x22
const BACKSLASH = 0x5c
const COMMA = 0x2c
const OPEN = [0x7b, 0x5b]
const CLOSE = [0x7d, 0x5d]

/**
 * What is too much about a JSON text, before a parser builds it up in memory: how deep its brackets nest, how
 * many parts it has. In UTF-8 none of the bytes looked for is ever a part of another character.
 */
export const tooMuchOf = (json: Uint8Array): { readonly value: string; readonly allowed: string } | null => {
  let depth = 0
  let parts = 0
  let inText = false
  for (let at = 0; at < json.length; at++) {
    const byte = json[at] as number
    if (inText) {
      if (byte === BACKSLASH) at++
      else if (byte === QUOTE) inText = false
    } else if (byte === QUOTE) inText = true
    else if (byte === COMMA) {
      if (++parts > MAX_BODY_PARTS)
        return { value: `more than ${MAX_BODY_PARTS} parts`, allowed: `at most ${MAX_BODY_PARTS} parts` }
    } else if (OPEN.includes(byte)) {
      if (++depth > MAX_BODY_DEPTH)
        return {
          value: `more than ${MAX_BODY_DEPTH} brackets deep`,
          allowed: `at most ${MAX_BODY_DEPTH} deep`,
        }
    } else if (CLOSE.includes(byte)) depth--
  }
  return null
}
