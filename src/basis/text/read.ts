import type { Outcome } from '../problem.ts'
import { type Quantity, type QuantityKey, quantity } from '../quantities.ts'
import { readCompoundTime } from './duration.ts'
import { faulty, type Reading, read } from './fault.ts'
import { placedIn, textOf } from './field.ts'
import { readLength } from './length.ts'
import { leadingNumber } from './number.ts'
import { checkedRange } from './range.ts'
import { readSingle } from './single.ts'
import { plainlyWritten } from './written.ts'

/** A number that has no unit: from text or as it stands in the file. */
const bareNumber = (value: unknown): Reading<{ readonly value: number; readonly text: string }> => {
  if (typeof value === 'number')
    return Number.isFinite(value)
      ? read({ value, text: String(value) })
      : faulty('not-a-number', 'Write a number in digits.')
  if (value === undefined || value === null) return faulty('empty', 'Write a number.')
  if (typeof value !== 'string') return faulty('not-a-number', 'Write a number in digits.')
  const text = plainlyWritten(value)
  if (text === '') return faulty('empty', 'Write a number.')
  const found = leadingNumber(text)
  if (!found.ok)
    return found.fault.word === 'not-a-number' ? faulty('not-a-number', 'Write a number in digits.') : found
  return found.value.rest === ''
    ? read({ value: found.value.number.value, text: found.value.text })
    : faulty('trailing', `Take out "${found.value.rest}": only a number may stand here.`)
}

const readRatio = (value: unknown, row: Quantity): Reading<number> => {
  const number = bareNumber(value)
  return number.ok ? checkedRange(number.value.value, row, { number: number.value.text, unit: null }) : number
}

const readWhole = (value: unknown, row: Quantity): Reading<number> => {
  const number = bareNumber(value)
  if (!number.ok) return number
  if (!Number.isInteger(number.value.value))
    return faulty(
      'not-whole',
      `Write a whole number: ${Math.floor(number.value.value)} or ${Math.ceil(number.value.value)}.`,
    )
  return checkedRange(number.value.value, row, { number: number.value.text, unit: null })
}

const readWithUnit = (value: unknown, row: Quantity): Reading<number> => {
  const text = textOf(value, row)
  if (!text.ok) return text
  const compound = readCompoundTime(text.value, row)
  if (compound !== null)
    return compound.ok ? checkedRange(compound.value, row, { number: text.value, unit: null }) : compound
  const written = readSingle(text.value, row)
  return written.ok
    ? checkedRange(written.value.value, row, { number: written.value.digits, unit: written.value.unit })
    : written
}

/**
 * Reads any quantity of the table from text with its unit: `20 °C`, `340 g`, `1 h 20 min`, `8 %`, `750 kg/m³`;
 * lengths as `readLength` does; ratios and counts as bare numbers [SI unit of the quantity; degrees for angles].
 *
 * Never guesses a unit. Problems have the kind of the quantity as the first half of their code: `mass.no-unit`.
 */
export const readQuantity = (text: unknown, field: string, key: QuantityKey): Outcome<number> => {
  const row = quantity(key)
  switch (row.kind) {
    case 'length':
      return readLength(text, field, key)
    case 'count':
      return readCount(text, field, key)
    default: {
      const reading = row.kind === 'ratio' ? readRatio(text, row) : readWithUnit(text, row)
      return placedIn(field, text, row)(reading)
    }
  }
}

/** Reads a whole number, from a number of the file or from text [1]. */
export const readCount = (value: unknown, field: string, key: QuantityKey): Outcome<number> => {
  const row = quantity(key)
  return placedIn(field, value, row)(readWhole(value, row))
}
