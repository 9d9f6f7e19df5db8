import { fromInches, type Metres } from '../units.ts'

export type InchDenominator = 16 | 32 | 64

/** A length to the nearest mark of an inch rule. */
export interface InchFraction {
  /** Reduced, as a maker reads it off: `6 3/16 in`. */
  readonly text: string
  readonly whole: number
  readonly numerator: number
  /** Reduced; 1 where there is no fraction. */
  readonly denominator: number
  /** What the fraction stands for [m]. */
  readonly value: Metres
  /** Fraction minus true length [m]. */
  readonly error: Metres
}

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b)

/**
 * The nearest sixteenth, thirty-second or sixty-fourth of an inch; halfway goes away from zero. `whole` and
 * `numerator` are magnitudes, the sign is in `text` and `value`.
 * @throws RangeError for a length that is not finite.
 */
export const inchFraction = (length: Metres, denominator: InchDenominator): InchFraction => {
  if (!Number.isFinite(length)) throw new RangeError(`No inch fraction of ${length}`)
  const marks = Math.round((Math.abs(length) * 1000 * denominator) / 25.4)
  const whole = Math.floor(marks / denominator)
  const over = marks % denominator
  const divisor = greatestCommonDivisor(denominator, over)
  const numerator = over / divisor
  const reduced = denominator / divisor
  const sign = length < 0 && marks > 0 ? -1 : 1
  const parts = [whole > 0 || over === 0 ? String(whole) : '', over > 0 ? `${numerator}/${reduced}` : '']
  const value = fromInches(sign * (marks / denominator))
  return {
    text: `${sign < 0 ? '-' : ''}${parts.filter((part) => part !== '').join(' ')} in`,
    whole,
    numerator,
    denominator: reduced,
    value,
    error: (value - length) as Metres,
  }
}
