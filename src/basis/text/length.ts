import type { Outcome } from '../problem.ts'
import { type Quantity, type QuantityKey, quantity } from '../quantities.ts'
import type { Metres } from '../units.ts'
import { readSingleOrDual } from './dual.ts'
import { faulty, type Reading, read } from './fault.ts'
import { placedIn, textOf } from './field.ts'
import { checkedRange } from './range.ts'
import { readSingle, type Written } from './single.ts'

const inRange = (written: Written, row: Quantity): Reading<Metres> => {
  const value = checkedRange(written.value, row, { number: written.digits, unit: written.unit })
  return value.ok ? read(value.value as Metres) : value
}

const readLengthText = (value: unknown, row: Quantity): Reading<Metres> => {
  const text = textOf(value, row)
  if (!text.ok) return text
  if (text.value.includes('±'))
    return faulty(
      'tolerance-not-here',
      'Leave out the ± and what follows it: this length takes no tolerance.',
    )
  const written = readSingleOrDual(text.value, row)
  return written.ok ? inRange(written.value, row) : written
}

const readTolerance = (text: string): Reading<Written> => {
  if (text === '') return faulty('empty', 'Write the tolerance after the ±, such as ± 0.3 mm.')
  const row = quantity('tolerance')
  const tolerance = readSingle(text, row)
  if (!tolerance.ok) return tolerance
  const value = inRange(tolerance.value, row)
  return value.ok ? tolerance : value
}

interface MeasuredLength {
  readonly value: Metres
  readonly tolerance: Metres
}

const readMeasuredText = (
  value: unknown,
  row: Quantity,
  defaultTolerance: Metres,
): Reading<MeasuredLength> => {
  const text = textOf(value, row)
  if (!text.ok) return text
  if (/\([^)]*±/.test(text.value))
    return faulty('brackets', 'Write the tolerance without brackets: 103.2 mm ± 0.3 mm.')
  const [main = '', ...tolerances] = text.value.split('±').map((part) => part.trim())
  if (tolerances.length === 0) {
    const length = readLengthText(value, row)
    return length.ok ? read({ value: length.value, tolerance: defaultTolerance }) : length
  }
  if (tolerances.length > 1) return faulty('two-tolerances', 'Write one ± with one tolerance.')
  const tolerance = readTolerance(tolerances[0] as string)
  if (!tolerance.ok) return tolerance
  const bare = /^[-\d.,/ ]+$/.test(main)
  const written = bare ? readSingle(main, row, tolerance.value.unit) : readSingleOrDual(main, row)
  if (!written.ok) return written
  const length = inRange(written.value, row)
  return length.ok ? read({ value: length.value, tolerance: tolerance.value.value as Metres }) : length
}

/**
 * Reads a length as makers write it: `16 mm`, `1.6 cm`, `5/8 in`, `6 3/16"`, `2-1/4 in`, `⅝ in`, or in two units
 * that check each other, `5/8 in (16 mm)`, where the first half governs [m].
 *
 * Never guesses a unit. Problems have codes `length.…`; the range is the quantity's row in the table.
 */
export const readLength = (text: unknown, field: string, key: QuantityKey): Outcome<Metres> => {
  const row = quantity(key)
  return placedIn(field, text, row)(readLengthText(text, row))
}

/**
 * Reads a length as measured, with its tolerance where one is written: `103.2 mm ± 0.3 mm`, `103.2 ± 0.3 mm`,
 * `4 1/16 in ± 1/64 in`, `+/-` for `±` [m].
 */
export const readMeasured = (
  text: unknown,
  field: string,
  key: QuantityKey,
  defaultTolerance: Metres,
): Outcome<MeasuredLength> => {
  const row = quantity(key)
  return placedIn(field, text, row)(readMeasuredText(text, row, defaultTolerance))
}
