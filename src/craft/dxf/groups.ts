import { round } from '../coordinate.ts'
import type { Point } from '../drawing.ts'

/** DXF is a list of pairs: a code that says what a value is, and the value, each on a line of its own. */
export type Group = readonly [code: number, value: string]

export const word = (code: number, value: string): Group => [code, value]
export const whole = (code: number, value: number): Group => [code, String(value)]

/** A number that readers take for a decimal one, to 0.1 µm. */
export const decimal = (code: number, value: number): Group => {
  const text = String(round(value))
  return [code, /[.e]/.test(text) ? text : `${text}.0`]
}

/** A point whose x has the given code; y and z follow by tens. */
export const point = (code: number, { x, y }: Point): readonly Group[] => [
  decimal(code, x),
  decimal(code + 10, y),
  decimal(code + 20, 0),
]

/** Codes are right-justified in three places, as is the custom of the format; lines end as on DOS. */
export const written = (groups: readonly Group[]): string =>
  groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('')
