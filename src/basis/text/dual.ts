import type { Quantity } from '../quantities.ts'
import type { Metres } from '../units.ts'
import { fromSi, toSi } from '../unitTable.ts'
import { faulty, type Reading, read } from './fault.ts'
import { inchFraction } from './inchFraction.ts'
import { withinRange } from './range.ts'
import { asText, readSingle, type Written } from './single.ts'

/** A tape or rule is read to the sixteenth, a drill set runs in sixty-fourths: common practice, no source. */
const TAPE_MARKS = 16
const BIT_STEPS = 64
const INCH = 0.0254

/** Rounding that a unit in the last written place stands for, either way [m]. */
const halfDigit = ({ number, unit }: Written): number => toSi(0.5 * 10 ** -number.decimals, unit)

const inInches = ({ unit }: Written): boolean => unit.symbol === 'in' || unit.symbol === 'ft'

/**
 * How far this half may lie from the other by its own rounding [m].
 *
 * A fraction (or whole number) of an inch written first is the name of a bit or a mark on the tape: exact. In the
 * second place it is the first half converted, to the nearest sixteenth above one inch and the nearest
 * sixty-fourth below, or finer where its own denominator is finer. Decimals stand for half a unit in their last
 * place wherever they stand.
 */
const rounding = (half: Written, place: 'first' | 'second'): number => {
  const { form, denominator } = half.number
  if (inInches(half) && form !== 'decimal') {
    if (place === 'first') return 0
    const steps = Math.abs(half.value) < INCH * (1 - 1e-9) ? BIT_STEPS : TAPE_MARKS
    return INCH / (2 * Math.max(steps, half.unit.symbol === 'in' ? denominator : 1))
  }
  return form === 'fraction' ? 0 : halfDigit(half)
}

/** One half is the other, converted and rounded to the digits it is written with. */
export const halvesAgree = (first: Written, second: Written): boolean => {
  const difference = Math.abs(first.value - second.value)
  const allowed = Math.max(rounding(first, 'first'), rounding(second, 'second'))
  // 63.5 mm written as 64 mm lies on the edge: let no bit of the arithmetic push it over.
  return difference <= allowed + 1e-9 * Math.max(Math.abs(first.value), Math.abs(second.value))
}

const trimmed = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)))
const inMillimetres = (value: number): string => `${trimmed(value * 1000, 3)} mm`
const inThousandths = (value: number): string => `${trimmed(value / INCH, 3)} in`

const counterpart = (half: Written): string =>
  inInches(half)
    ? `${asText(half)} is ${inMillimetres(half.value)}`
    : `${asText(half)} is ${inThousandths(half.value)}`

/** The second half as it should read beside the first, in its own unit and about as finely. */
const mendedSecond = (first: Written, second: Written, quantity: Quantity): string | null => {
  const written = fromSi(first.value, second.unit)
  const candidates =
    second.unit.symbol === 'in' && second.number.form !== 'decimal'
      ? ([16, 32, 64] as const).map((denominator) => inchFraction(first.value as Metres, denominator).text)
      : [0, 1, 2, 3].map((more) => `${written.toFixed(second.number.decimals + more)} ${second.unit.symbol}`)
  return (
    candidates.find((text) => {
      const half = readSingle(text, quantity)
      return half.ok && halvesAgree(first, half.value)
    }) ?? null
  )
}

/** Says which values stand against each other, by how much, and what would be consistent. */
const mismatch = (first: Written, second: Written, quantity: Quantity): Reading<never> => {
  const difference = Math.abs(first.value - second.value)
  const allowed = Math.max(rounding(first, 'first'), rounding(second, 'second'))
  const mended = mendedSecond(first, second, quantity)
  const offers = [
    withinRange(first.value, quantity)
      ? `if ${asText(first)} is right write ${asText(first)}${mended === null ? '' : ` (${mended})`}`
      : null,
    withinRange(second.value, quantity) ? `if ${asText(second)} is right write ${asText(second)}` : null,
  ].filter((offer) => offer !== null)
  return faulty(
    'dual-mismatch',
    `${counterpart(first)} and ${counterpart(second)}: they lie ${inMillimetres(difference)} ` +
      `(${inThousandths(difference)}) apart, and rounding explains no more than ${inMillimetres(allowed)}. ` +
      `Measure again${offers.length > 0 ? `; ${offers.join(', ')}` : ''}.`,
    'two halves that name one length',
  )
}

const BRACKETED = /^([^(=]+)\(([^()=]+)\)$/
const EQUATED = /^([^(=]+)=([^()=]+)$/

/** Reads a plainly written length, in one unit or in two: `16 mm`, `5/8 in (16 mm)`, `5/8 in = 16 mm`. The first half governs. */
export const readSingleOrDual = (text: string, quantity: Quantity): Reading<Written> => {
  const halves = BRACKETED.exec(text) ?? EQUATED.exec(text)
  if (halves === null) {
    const opens = text.search(/[()=]/)
    return opens < 0
      ? readSingle(text, quantity)
      : faulty('brackets', 'Write the second unit once, in brackets at the end: 5/8 in (16 mm).')
  }
  const first = readSingle((halves[1] as string).trim(), quantity)
  if (!first.ok) return first
  const second = readSingle((halves[2] as string).trim(), quantity)
  if (!second.ok) return second
  return halvesAgree(first.value, second.value)
    ? read(first.value)
    : mismatch(first.value, second.value, quantity)
}
