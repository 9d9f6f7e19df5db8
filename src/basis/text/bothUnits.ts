import { quantity } from '../quantities.ts'
import { fromInches, fromMillimetres, type Metres, MILLIMETRES_PER_INCH } from '../units.ts'
import { halvesAgree } from './dual.ts'
import { formatLength } from './format.ts'
import { type InchDenominator, inchFraction } from './inchFraction.ts'
import { readSingle } from './single.ts'

const INCH = 0.0254
const ROW = quantity('clearance')

/** A length in both systems, as sentences and pages say it [from m]: `9 mm (23/64 in)`. */
export const long = (length: number): string => formatLength(length as Metres, { units: 'both' })

const HUNDREDTHS = 1e5

/** A length in both systems, to a hundredth of a millimetre, so that near misses differ [from m]: `97.36 mm (3 13/16 in)`. */
export const closely = (length: number): string => {
  const [, decimals = ''] = String(Math.round(length * HUNDREDTHS) / 100).split('.')
  return formatLength(length as Metres, { units: 'both', digits: decimals.length })
}

const SIXTY_FOURTH = INCH / 64

/**
 * How far something may be off [from m]: `1 mm (3/64 in)`, the nearest sixty-fourth, which a rule shows, rather than thousandths
 * that it does not. What is finer than that, or would not read as one length, is said by `long`.
 */
export const slack = (length: number): string => {
  const text = `${formatLength(length as Metres, { units: 'mm' })} (${inchFraction(length as Metres, 64).text})`
  const [first, second] = [
    readSingle(formatLength(length as Metres, { units: 'mm' }), ROW),
    readSingle(inchFraction(length as Metres, 64).text, ROW),
  ]
  const agree = first.ok && second.ok && halvesAgree(first.value, second.value)
  return length >= SIXTY_FOURTH / 2 && agree ? text : long(length)
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

/** A maker’s rule has sixteenths, and thirty-seconds on its first inches: common practice, no source. */
const ruleMarks = (length: number): InchDenominator => (length < INCH / 4 ? 32 : 16)
/** Below this a rule has no say: tin is told in thousandths [m]. */
const OFF_THE_RULE = INCH / 16
/** What arithmetic adds to a length that lies on a mark [mm]. */
const SLACK = 1e-6
/** Whole millimetres and marks of the rule that stand for one another lie this near at the latest [mm]. */
const SEARCH = 4

/** Whole millimetres with the nearest mark of a rule, where reading takes the two for one length; else null. */
const pairAt = (
  millimetres: number,
  denominator: InchDenominator = ruleMarks(fromMillimetres(millimetres)),
): { readonly text: string; readonly mark: number } | null => {
  const length = fromMillimetres(millimetres)
  const mark = Math.round((length / INCH) * denominator) / denominator
  const text = `${millimetres} mm (${inchFraction(fromInches(mark), denominator).text})`
  const first = readSingle(`${millimetres} mm`, ROW)
  const second = readSingle(inchFraction(fromInches(mark), denominator).text, ROW)
  return first.ok && second.ok && halvesAgree(first.value, second.value)
    ? { text, mark: mark * MILLIMETRES_PER_INCH }
    : null
}

/** The first pair, from the length on outwards, both halves of which pass; where there is none, as finely as need be. */
const paired = (length: number, order: readonly number[], passes: (half: number) => boolean): string => {
  if (length < OFF_THE_RULE) return long(length)
  for (const millimetres of order) {
    if (millimetres <= 0) continue
    const pair = pairAt(millimetres)
    if (pair !== null && passes(millimetres) && passes(pair.mark)) return pair.text
  }
  return long(length)
}

const steps = (from: number, by: 1 | -1): readonly number[] =>
  Array.from({ length: SEARCH }, (_, i) => from + by * i)

/**
 * A distance to set out with a rule [from m]: whole millimetres and the nearest sixteenth of an inch, below 1/4 in and where a
 * sixteenth would not read as the same length the nearest thirty-second: `24 mm (15/16 in)`, `20 mm (25/32 in)`. For a bit or a
 * template say `long`, which is finer.
 */
export const onRule = (length: number): string => {
  if (length < OFF_THE_RULE) return long(length)
  const near = Math.round(length * 1000)
  return (pairAt(near) ?? pairAt(near, 32))?.text ?? long(length)
}

/** As `onRule`, for a least distance: whoever goes by either half keeps to it [from m]. */
export const onRuleAtLeast = (length: number): string => {
  const least = length * 1000 - SLACK
  return paired(length, steps(Math.ceil(least), 1), (half) => half >= least)
}

/** As `onRule`, for a greatest distance: whoever goes by either half keeps to it [from m]. */
export const onRuleAtMost = (length: number): string => {
  const most = length * 1000 + SLACK
  return paired(length, steps(Math.floor(most), -1), (half) => half <= most)
}
