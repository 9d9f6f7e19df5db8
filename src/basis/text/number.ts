import { faulty, type Reading, read } from './fault.ts'

/** A number with the fineness it was written to, which is what a cross-check may lean on. */
export interface WrittenNumber {
  readonly value: number
  readonly form: 'whole' | 'decimal' | 'fraction'
  /** Digits after the point; 0 for whole numbers and fractions. */
  readonly decimals: number
  /** Of the fraction as written; 1 for the other forms. */
  readonly denominator: number
}

/** A number at the start of a text, and what comes after it. */
export interface LeadingNumber {
  readonly number: WrittenNumber
  /** The number as written, sign included. */
  readonly text: string
  readonly rest: string
}

const whole = (value: number): WrittenNumber => ({ value, form: 'whole', decimals: 0, denominator: 1 })

const decimal = (before: string, after: string): WrittenNumber => ({
  value: Number(`${before === '' ? '0' : before}.${after}`),
  form: 'decimal',
  decimals: after.length,
  denominator: 1,
})

const notANumber = (text: string): Reading<never> =>
  text === ''
    ? faulty('empty', 'Write a number and its unit.')
    : faulty('not-a-number', 'Begin with a number: 16, 1.6, 5/8 or 6 3/16.')

/** Why digits that match none of the forms below do not make a number. */
const unreadable = (text: string): Reading<never> => {
  if (/^[\d.,]*[.,]\d*[.,]/.test(text))
    return faulty(
      'separators',
      'Leave out the marks between thousands and keep one decimal point: 1600 or 1600.5.',
    )
  if (/^\d+[.,](?!\d)/.test(text))
    return faulty('not-a-number', 'Write a digit after the decimal point, or leave the point out.')
  if (/^[\d.,]*\//.test(text))
    return faulty('not-a-number', 'Write a fraction with whole numbers, such as 5/8 or 6 3/16.')
  return notANumber(text)
}

const fractionOf = (wholes: number, top: number, under: number, text: string): Reading<WrittenNumber> => {
  if (under === 0)
    return faulty('zero-denominator', `Mend the fraction ${text}: nothing can be divided into 0 parts.`)
  if (wholes > 0 && top >= under)
    return faulty(
      'improper-fraction',
      `Mend the fraction in ${text}: after a whole number it must be less than one.`,
    )
  return read({ value: wholes + top / under, form: 'fraction', decimals: 0, denominator: under })
}

const commaDecimal = (before: string, after: string, text: string): Reading<WrittenNumber> => {
  // 1,600 is 1600 to one reader and 1.6 to another. 0,125 and 1600,125 can only be decimals.
  const couldBeThousands = after.length === 3 && /^[1-9]\d{0,2}$/.test(before)
  return couldBeThousands
    ? faulty(
        'ambiguous-comma',
        `Write ${before}${after} or ${before}.${after}: the comma can be read both ways.`,
      )
    : text.startsWith(',')
      ? faulty('not-a-number', `Write 0.${after}.`)
      : read(decimal(before, after))
}

/** No form may run on into more digits: 1.2.3 is not 1.2 and a rest. */
const END = '(?![\\d.,/])'
const MIXED = new RegExp(`^(\\d+)[ -](\\d+)/(\\d+)${END}`)
const FRACTION = new RegExp(`^(\\d+)/(\\d+)${END}`)
const POINT = new RegExp(`^(\\d*)\\.(\\d+)${END}`)
const COMMA = new RegExp(`^(\\d*),(\\d+)${END}`)
const WHOLE = new RegExp(`^(\\d+)${END}`)
const EXPONENT = /^[\d.,]+[eE][+-]?\d/

const unsigned = (text: string): Reading<{ number: WrittenNumber; text: string }> => {
  const forms: readonly [RegExp, (found: readonly string[]) => Reading<WrittenNumber>][] = [
    [MIXED, ([all, a, b, c]) => fractionOf(Number(a), Number(b), Number(c), all as string)],
    [FRACTION, ([all, b, c]) => fractionOf(0, Number(b), Number(c), all as string)],
    [POINT, ([, a, b]) => read(decimal(a as string, b as string))],
    [COMMA, ([all, a, b]) => commaDecimal(a as string, b as string, all as string)],
    [WHOLE, ([, a]) => read(whole(Number(a)))],
  ]
  if (EXPONENT.test(text))
    return faulty('exponent', 'Write the number out in digits, without a power of ten.')
  for (const [form, make] of forms) {
    const found = form.exec(text)
    if (found === null) continue
    const number = make(found)
    return number.ok ? read({ number: number.value, text: found[0] }) : number
  }
  return unreadable(text)
}

/**
 * The number at the start of a plainly written text: `16`, `1.6`, `.5`, `1,6`, `5/8`, `6 3/16`, `2-1/4`, with or
 * without a minus sign.
 */
export const leadingNumber = (text: string): Reading<LeadingNumber> => {
  const negative = text.startsWith('-')
  const body = negative ? text.slice(1).trimStart() : text
  const found = unsigned(body)
  if (!found.ok) return found
  const { number, text: digits } = found.value
  return read({
    number: negative ? { ...number, value: -number.value } : number,
    text: negative ? `-${digits}` : digits,
    rest: body.slice(digits.length).trim(),
  })
}
