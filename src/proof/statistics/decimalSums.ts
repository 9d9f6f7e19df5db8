/**
 * Sums of decimals as written, without rounding. A reading of 1000000000000.4 is not quite a binary number, and
 * squares of what is left of it would be wrong in the third digit (NIST's SmLs07 is made to show that). The shortest
 * text that reads back as a number is the decimal that was written, so whole-number arithmetic on that is exact.
 */
export interface DecimalSums {
  readonly count: number
  /** Everything below is in units of 10^exponent. */
  readonly exponent: number
  readonly sum: bigint
  readonly squares: bigint
}

interface Decimal {
  readonly digits: bigint
  readonly exponent: number
}

const asWritten = (value: number): Decimal => {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a reading`)
  const [mantissa = '0', power = '0'] = String(value).split('e')
  const [whole = '0', part = ''] = mantissa.split('.')
  return { digits: BigInt(whole + part), exponent: Number(power) - part.length }
}

/** Sum and sum of squares. @throws RangeError for a value that is not finite. */
export const decimalSums = (values: readonly number[]): DecimalSums => {
  const decimals = values.map(asWritten)
  const exponent = decimals.reduce((least, one) => Math.min(least, one.exponent), 0)
  let sum = 0n
  let squares = 0n
  for (const one of decimals) {
    const scaled = one.digits * 10n ** BigInt(one.exponent - exponent)
    sum += scaled
    squares += scaled * scaled
  }
  return { count: values.length, exponent, sum, squares }
}

/** As many digits as a double holds, and some to spare. */
const DIGITS = 40

/** numerator / denominator × 10^exponent as the nearest number. */
export const quotient = (numerator: bigint, denominator: bigint, exponent: number): number => {
  const size = (value: bigint): number => (value < 0n ? -value : value).toString().length
  const shift = Math.max(0, DIGITS - size(numerator) + size(denominator))
  const whole = (numerator * 10n ** BigInt(shift)) / denominator
  return Number(`${whole}e${exponent - shift}`)
}
