/** What a reader of text found wrong, before anyone knows which field it stood in. */
export interface Fault {
  /** Second half of the problem's code: `no-unit` becomes `length.no-unit`. */
  readonly word: string
  /** Null: what the quantity's row in the table allows. */
  readonly allowed: string | null
  readonly fix: string
}

export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: Fault }

export const read = <T>(value: T): Reading<T> => ({ ok: true, value })
export const faulty = (word: string, fix: string, allowed: string | null = null): Reading<never> => ({
  ok: false,
  fault: { word, allowed, fix },
})

const LONGEST_SHOWN = 60

/** Any value of a file as a maker would point at it, on one line and of bearable length; empty where there is none. */
export const shown = (value: unknown): string => {
  if (value === undefined) return ''
  if (value === null) return 'null (no value)'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'a group of fields'
  if (typeof value === 'function' || typeof value === 'symbol') return 'something that is not text'
  const line = String(value)
    // Control characters and odd spaces would garble a terminal.
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Zs}\p{Cs}]+/gu, ' ')
    .trim()
  if (line === '') return 'empty text'
  const characters = [...line]
  return characters.length > LONGEST_SHOWN ? `${characters.slice(0, LONGEST_SHOWN - 1).join('')}…` : line
}
