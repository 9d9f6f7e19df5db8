import { bad, good, type Outcome } from '#basis/problem.ts'
import { readLength } from '#basis/text/length.ts'
import { plainlyWritten } from '#basis/text/written.ts'
import { MILLIMETRES_PER_INCH, toMillimetres } from '#basis/units.ts'
import type { Bit } from '#stove/model.ts'
import { LETTER_BITS, NUMBER_BITS } from './designations.ts'
import { inchName, metricName } from './name.ts'

const NUMBER_SIZE = /^(?:#\s*|(?:no\.?|number)\s*)(\d+)$/i
const LETTER_SIZE = /^(?:letter\s+)?([a-z])$/i
const STEP_SIZE = /\s+step$/i
const INCHES = /(?:in\.?|inch|inches|")$/

/** Whether the first half of a length is written in inches. */
const isInches = (length: string): boolean => INCHES.test((plainlyWritten(length).split('(')[0] ?? '').trim())

const readNumberSize = (digits: string, field: string): Outcome<Bit> => {
  const bit = /^0/.test(digits) ? undefined : NUMBER_BITS[Number(digits) - 1]
  if (bit !== undefined) return good(bit)
  return bad({
    code: 'bit.number-size',
    field,
    value: `#${digits}`,
    allowed: 'number sizes #1 (5.8 mm) to #97 (0.15 mm)',
    fix: 'Read the number on the bit’s shank again, or measure the bit and give its diameter: "5.1 mm".',
  })
}

/**
 * Reads a drill bit as the trade names it: `6 mm`, `5/8 in`, `5/8 in (16 mm)`, `#7`, `E` or `letter E`, and
 * `16 mm step` for a step of a step drill [m]. The name in the answer is the plain form, of a dual entry
 * the first half. A bare number is refused: #7 is 5.1 mm and 7 mm is 7 mm.
 */
export const readBit = (text: unknown, field: string): Outcome<Bit> => {
  if (typeof text === 'string') {
    const written = text.trim()
    const number = NUMBER_SIZE.exec(written)?.[1]
    if (number !== undefined) return readNumberSize(number, field)
    const letter = LETTER_SIZE.exec(written)?.[1]
    const lettered = letter === undefined ? undefined : LETTER_BITS[letter.toUpperCase().charCodeAt(0) - 65]
    if (lettered !== undefined) return good(lettered)
  }
  const isStep = typeof text === 'string' && STEP_SIZE.test(text)
  const length = isStep ? text.replace(STEP_SIZE, '') : text
  const diameter = readLength(length, field, 'bitDiameter')
  if (!diameter.ok) return diameter
  const millimetres = toMillimetres(diameter.value)
  const name =
    typeof length === 'string' && isInches(length)
      ? inchName(millimetres / MILLIMETRES_PER_INCH)
      : metricName(millimetres)
  return good({ name: isStep ? `${name} step` : name, diameter: diameter.value })
}
