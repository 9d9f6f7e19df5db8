import { long } from '#basis/text/bothUnits.ts'
import { formatLength } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'

/** What no line break may part. */
const UNBROKEN_SPACE = '\u00a0'

export const unbroken = (text: string): string => text.replaceAll(' ', UNBROKEN_SPACE)

/** A size in both units, kept on one line [from m]: `12 mm (15/32 in)`. */
export const size = (value: number): string => unbroken(long(value))

/**
 * A distance to set out with a rule [from m]: to the sixteenth of an inch where that agrees with the millimetres beside it,
 * `21 mm (13/16 in)`.
 */
export const setOut = (value: number): string =>
  unbroken(formatLength(value as Metres, { units: 'both', denominator: 16 }))

/** The two halves of a size, one over the other: `21 mm`, `(13/16 in)`. */
export const stacked = (text: string): readonly string[] => text.split(/\s(?=\()/)
