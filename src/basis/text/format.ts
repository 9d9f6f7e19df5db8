import { type QuantityKey, quantity } from '../quantities.ts'
import type { Metres } from '../units.ts'
import { fromSi, type Kind, type Unit, unitBySymbol } from '../unitTable.ts'
import { halvesAgree } from './dual.ts'
import { type InchDenominator, inchFraction } from './inchFraction.ts'
import { withUnit } from './range.ts'
import { readSingle, type Written } from './single.ts'

export { type InchDenominator, inchFraction } from './inchFraction.ts'

/**
 * - `mm`: `16 mm`; with `digits`, exactly so many after the point, else up to one, or two below 1 mm.
 * - `in`: nearest mark, `6 3/16 in`; with `showError`, how much the mark is off: `5/8 in (0.13 mm small)`.
 * - `both`: `16 mm (5/8 in)`, which reads back as the millimetres.
 */
export type LengthFormat =
  | { readonly units: 'mm'; readonly digits?: number }
  | { readonly units: 'in'; readonly denominator: InchDenominator; readonly showError?: boolean }
  | { readonly units: 'both'; readonly digits?: number; readonly denominator?: InchDenominator }

const INCH = 0.0254
/** Below a sixteenth of an inch a fraction says too little: tin is named in thousandths. */
const THOUSANDTHS_BELOW = INCH / 16

const finite = (value: number): number => {
  if (!Number.isFinite(value)) throw new RangeError(`Cannot write ${value} as a quantity`)
  return value
}

/** -0 and what rounds to it lose the sign. */
const withoutMinusZero = (text: string): string => (/^-[0.]+$/.test(text) ? text.slice(1) : text)
/** What binary numbers lack to a decimal half: 6.35, a quarter inch in millimetres, is held as 6.34999… and is 6.4, not 6.3. */
const HALF_SLACK = 1e-12
const fixed = (value: number, decimals: number): string =>
  withoutMinusZero((finite(value) * (1 + HALF_SLACK)).toFixed(decimals))
const trimmed = (value: number, decimals: number): string => String(Number(fixed(value, decimals)))

/** A tenth is what a rule and a calliper give a maker; tin is thinner than that. */
const usualDecimals = (inMillimetres: number): number => (Math.abs(inMillimetres) < 1 ? 2 : 1)

const millimetres = (value: number, digits: number | undefined): string =>
  digits === undefined
    ? `${trimmed(value * 1000, usualDecimals(value * 1000))} mm`
    : `${fixed(value * 1000, digits)} mm`

/** How far the mark lies from the length it stands for, in words a maker uses of a drill. */
const markError = (error: number): string => {
  const size = Math.abs(error) * 1000
  if (size < 1e-6) return 'exact'
  if (size < 0.005) return 'within 0.01 mm'
  return `${size.toFixed(2)} mm ${error < 0 ? 'small' : 'large'}`
}

const lengthRow = quantity('clearance')

const half = (text: string): Written => {
  const written = readSingle(text, lengthRow)
  if (!written.ok) throw new Error(`Wrote a length that does not read back: ${text}`)
  return written.value
}

const inThousandths = (value: number): string => `${trimmed(value / INCH, 3)} in`

/** As finely as the size deserves: thousandths for tin, sixty-fourths for bits, sixteenths for cans. */
const inches = (value: Metres): string =>
  Math.abs(value) < THOUSANDTHS_BELOW
    ? inThousandths(value)
    : inchFraction(value, Math.abs(value) < INCH ? 64 : 16).text

/** The coarsest inch form, from the wanted denominator on, that agrees with the millimetres beside it. */
const inchesBeside = (first: Written, wanted: InchDenominator | undefined): string => {
  const value = first.value as Metres
  if (Math.abs(value) < THOUSANDTHS_BELOW) return inThousandths(value)
  const coarsest = wanted ?? (Math.abs(value) < INCH ? 64 : 16)
  const denominators = ([16, 32, 64] as const).filter((denominator) => denominator >= coarsest)
  const texts = denominators.map((denominator) => inchFraction(value, denominator).text)
  return texts.find((text) => halvesAgree(first, half(text))) ?? (texts.at(-1) as string)
}

/**
 * A length as text.
 * @throws RangeError for a length that is not finite, or for digits that `toFixed` does not take.
 */
export const formatLength = (value: Metres, how: LengthFormat): string => {
  finite(value)
  switch (how.units) {
    case 'mm':
      return millimetres(value, how.digits)
    case 'in': {
      const mark = inchFraction(value, how.denominator)
      return how.showError === true ? `${mark.text} (${markError(mark.error)})` : mark.text
    }
    case 'both': {
      const first = millimetres(value, how.digits)
      return `${first} (${inchesBeside(half(first), how.denominator)})`
    }
  }
}

/** Three significant digits, but never a rounded whole part and no idle zeros. */
const significant = (value: number): string => {
  if (finite(value) === 0) return '0'
  // Only a residual is ever as small as this; it is shown, never read back.
  if (Math.abs(value) < 1e-6) return value.toExponential(1)
  const decimals = 2 - Math.floor(Math.log10(Math.abs(value)))
  return trimmedPlain(value, Math.min(Math.max(decimals, 0), 9))
}

/** `String` would fall into powers of ten below 1e-6. */
const trimmedPlain = (value: number, decimals: number): string => {
  const text = fixed(value, decimals)
  return text.includes('.') ? withoutMinusZero(text.replace(/\.?0+$/, '')) : text
}

const inUnit = (value: number, unit: Unit, kind: Kind): string => {
  const shown = fromSi(value, unit)
  return kind === 'length' && unit.symbol === 'mm'
    ? trimmedPlain(shown, usualDecimals(shown))
    : significant(shown)
}

/** `1 h 20 min` from an hour on, which nobody reads as 80 min [from s]. */
const spokenTime = (seconds: number): string => {
  if (seconds < 60) return `${significant(seconds)} s`
  if (seconds < 3570) return `${significant(seconds / 60)} min`
  const minutes = Math.round(seconds / 60)
  return minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`
}

/**
 * A quantity as a maker reads it, in its usual unit or the one asked for: `3.02 kW`, `842 °C`, `1 h 20 min`.
 * @param value in the SI unit of the quantity; degrees for angles
 * @throws RangeError for a value that is not finite or a unit the kind does not have.
 */
export const formatQuantity = (value: number, key: QuantityKey, unit?: string): string => {
  const row = quantity(key)
  finite(value)
  const symbol = unit ?? row.displayUnits[0]
  if (symbol === undefined) return row.kind === 'count' ? trimmedPlain(value, 0) : significant(value)
  const chosen = unitBySymbol(row.kind, symbol)
  if (chosen === null) throw new RangeError(`${symbol} is not a unit of ${row.kind}`)
  if (row.kind === 'time' && unit === undefined && value >= 0) return spokenTime(value)
  if (row.kind === 'length' && symbol === 'in') return inches(value as Metres)
  return withUnit(inUnit(value, chosen, row.kind), chosen)
}
