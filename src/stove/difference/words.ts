import type { QuantityKey } from '#basis/quantities.ts'
import { readLength, readMeasured } from '#basis/text/length.ts'
import { readQuantity } from '#basis/text/read.ts'
import type { Metres } from '#basis/units.ts'
import { readBit } from '#stove/bit/readBit.ts'

/** One thing that was changed. */
export interface Difference {
  /** What of the newer stove it is about, to point at; null where it is about none of its parts. */
  readonly part: string | null
  readonly opening: string | null
  /** `shell, intake`, `fuel`, `pot`. */
  readonly subject: string
  /** `12 → 14 holes`. */
  readonly what: string
}

/** Closer than this two lengths are one [m]. */
const SAME = 1e-6

/** A length as written, with or without its tolerance [m]; null for what does not read. */
export const lengthOf = (text: string, key: QuantityKey): number | null => {
  const plain = readLength(text, '', key)
  if (plain.ok) return plain.value
  const measured = readMeasured(text, '', key, 0 as Metres)
  return measured.ok ? measured.value.value : null
}

/** Before the change, for more, for less: `filled`, `higher`, `lower`. */
export type ChangeWords = readonly [verb: string, more: string, less: string]

/** How lengths of both files are said, in whatever unit each was written. */
export interface Telling {
  /** A length as written, in the units of whoever reads; what does not read stays as it is. */
  readonly length: (text: string, key: QuantityKey) => string
  /** A bit by its size, and by its name where that is none: `#7, 5.1 mm`. */
  readonly bit: (text: string) => string
  /** `6 mm higher: 94 mm → 100 mm`; null where the two are one length. */
  readonly change: (before: string, after: string, key: QuantityKey, words: ChangeWords) => string | null
}

/** Tells lengths as a writer of them does [from m]. */
export const tellingBy = (written: (length: number) => string): Telling => {
  const length = (text: string, key: QuantityKey): string => {
    const read = lengthOf(text, key)
    return read === null ? text : written(read)
  }
  return {
    length,
    bit: (text) => {
      const read = readBit(text, '')
      if (!read.ok) return text
      const { name, diameter } = read.value
      if (/^\d.* step$/.test(name)) return `${written(diameter)} step`
      return /^\d/.test(name) ? written(diameter) : `${name}, ${written(diameter)}`
    },
    change: (before, after, key, [verb, more, less]) => {
      const [was, is] = [lengthOf(before, key), lengthOf(after, key)]
      if (was === null || is === null) return before === after ? null : `${before} → ${after}`
      if (Math.abs(is - was) < SAME) return null
      const by = `${written(Math.abs(is - was))} ${is > was ? more : less}`
      return `${verb === '' ? '' : `${verb} `}${by}: ${written(was)} → ${written(is)}`
    },
  }
}

/** `moisture 12 % → 15 %`; null where nothing changed. */
export const plainChange = (name: string, before: string | number, after: string | number): string | null =>
  before === after ? null : `${name === '' ? '' : `${name} `}${before} → ${after}`

/** `12 → 14 holes`. */
export const countChange = (before: number, after: number, one: string, many: string): string | null =>
  before === after ? null : `${before} → ${after} ${after === 1 ? one : many}`

/** Degrees as written; null for what does not read. */
const degreesOf = (text: string | undefined): number | null => {
  const read = readQuantity(text ?? '0 deg', '', 'bearing')
  return read.ok ? read.value : null
}

/** `15° clockwise`, the short way round; null where it points the same way. */
export const turnChange = (before: string | undefined, after: string | undefined): string | null => {
  const [was, is] = [degreesOf(before), degreesOf(after)]
  if (was === null || is === null) return before === after ? null : `turned ${before} → ${after}`
  const turn = ((((is - was) % 360) + 540) % 360) - 180
  if (Math.abs(turn) < 1e-6) return null
  return `turned ${Number(Math.abs(turn).toFixed(1))}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`
}
