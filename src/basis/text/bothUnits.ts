import { fromInches, type Metres, MILLIMETRES_PER_INCH } from '../units.ts'
import { formatLength } from './format.ts'
import { type InchDenominator, inchFraction } from './inchFraction.ts'

/** A length in both systems, as sentences and pages say it [from m]: `9 mm (23/64 in)`. */
export const long = (length: number): string => formatLength(length as Metres, { units: 'both' })

const HUNDREDTHS = 1e5

/** A length in both systems, to a hundredth of a millimetre, so that near misses differ [from m]: `97.36 mm (3 13/16 in)`. */
export const closely = (length: number): string => {
  const [, decimals = ''] = String(Math.round(length * HUNDREDTHS) / 100).split('.')
  return formatLength(length as Metres, { units: 'both', digits: decimals.length })
}

/** From one length to another, the smaller first [from m]: `8.6 mm (11/32 in) to 10.6 mm (27/64 in)`. */
export const span = (one: number, other: number): string => {
  const [low, high] = one <= other ? [long(one), long(other)] : [long(other), long(one)]
  return low === high ? low : `${low} to ${high}`
}

/** An area in both systems [from m2]: `574 mm² (0.89 in²)`. */
export const wide = (area: number): string => {
  const squareMillimetres = area * 1e6
  const squareInches = squareMillimetres / MILLIMETRES_PER_INCH ** 2
  return `${squareMillimetres.toFixed(squareMillimetres < 10 ? 1 : 0)} mm² (${squareInches.toFixed(squareInches < 1 ? 2 : 1)} in²)`
}

const INCH = 0.0254
/** A maker’s rule has sixteenths, and thirty-seconds on its first inches: common practice, no source. */
const ruleMarks = (length: number): InchDenominator => (length < INCH / 4 ? 32 : 16)
/** Below this a rule has no say: tin is told in thousandths [m]. */
const OFF_THE_RULE = INCH / 16
const TENTHS_OF_MILLIMETRE = 1e4
/** What arithmetic adds to a length that lies on a mark, in marks. */
const SLACK = 1e-6

type Rounding = (value: number) => number
const up: Rounding = (value) => Math.ceil(value - SLACK)
const down: Rounding = (value) => Math.floor(value + SLACK)

const inTenths = (length: number, rounded: Rounding): Metres =>
  (rounded(length * TENTHS_OF_MILLIMETRE) / TENTHS_OF_MILLIMETRE) as Metres

const onMarks = (length: number, shown: Metres, rounded: Rounding): string => {
  if (shown < OFF_THE_RULE) return long(shown)
  const denominator = ruleMarks(length)
  const mark = fromInches(rounded((length / INCH) * denominator) / denominator)
  return `${formatLength(shown, { units: 'mm' })} (${inchFraction(mark, denominator).text})`
}

/**
 * A distance to set out with a rule [from m]: tenths of a millimetre, and the nearest sixteenth of an inch, below 1/4 in the
 * nearest thirty-second: `22.5 mm (7/8 in)`. For a bit or a template say `long`, which is finer.
 */
export const onRule = (length: number): string => {
  // The mark of what is shown, as `long` has it, so that the two never disagree about one length.
  const shown = inTenths(length, Math.round)
  return onMarks(shown, shown, Math.round)
}

/** As `onRule`, for a least distance: whoever goes by either half keeps to it [from m]. */
export const onRuleAtLeast = (length: number): string => onMarks(length, inTenths(length, up), up)

/** As `onRule`, for a greatest distance: whoever goes by either half keeps to it [from m]. */
export const onRuleAtMost = (length: number): string => onMarks(length, inTenths(length, down), down)
