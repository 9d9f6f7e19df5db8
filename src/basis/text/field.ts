import { bad, good, type Outcome } from '../problem.ts'
import type { Quantity } from '../quantities.ts'
import { faulty, type Reading, read, shown } from './fault.ts'
import { allowedRange } from './range.ts'
import { unitMissing } from './single.ts'
import { plainlyWritten } from './written.ts'

const LONGEST = 100

/** Characters nobody can see, which would make two equal-looking files differ. */
const INVISIBLE = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}]/u

const codePoint = (character: string): string =>
  `U+${(character.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`

/** The text of a field that must hold text, plainly written. */
export const textOf = (value: unknown, row: Quantity): Reading<string> => {
  const example = row.kind === 'length' ? 'with its unit, such as "16 mm" or "5/8 in"' : 'with its unit'
  if (value === undefined || value === null) return faulty('empty', `Write it as text, ${example}.`)
  if (typeof value === 'number')
    return Number.isFinite(value)
      ? unitMissing(String(value), value, row)
      : faulty('not-a-number', `Write a number ${example}.`)
  if (typeof value !== 'string') return faulty('not-text', `Write it as text, ${example}.`)
  const text = plainlyWritten(value)
  const invisible = INVISIBLE.exec(text)
  if (invisible !== null)
    return faulty(
      'invisible',
      `Take out the invisible character ${codePoint(invisible[0])}, or type the text afresh.`,
    )
  return text.length > LONGEST
    ? faulty('too-long', 'Write one number and its unit, and nothing else.')
    : read(text)
}

/** What was read, or the fault as a problem of the field it stood in. */
export const placedIn =
  (field: string, value: unknown, row: Quantity) =>
  <T>(reading: Reading<T>): Outcome<T> =>
    reading.ok
      ? good(reading.value)
      : bad({
          code: `${row.kind}.${reading.fault.word}`,
          field,
          value: shown(value),
          allowed: reading.fault.allowed ?? allowedRange(row),
          fix: reading.fault.fix,
        })
