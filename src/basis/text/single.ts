import type { Quantity } from '../quantities.ts'
import { toSi, type Unit, unitBySymbol } from '../unitTable.ts'
import { faulty, type Reading, read } from './fault.ts'
import { leadingNumber, type WrittenNumber } from './number.ts'
import { withinRange, withUnit } from './range.ts'
import { unitNamed } from './unitName.ts'

/** One number with its unit, as written and as understood. */
export interface Written {
  /** [SI unit of the kind] */
  readonly value: number
  readonly number: WrittenNumber
  /** The number's own text. */
  readonly digits: string
  readonly unit: Unit
}

export const asText = ({ digits, unit }: Written): string => withUnit(digits, unit)

const whichUnit = (digits: string, number: number, quantity: Quantity): string => {
  if (quantity.kind === 'share')
    return `Percent, or a fraction of one? Write ${digits} % or ${Number((number * 100).toPrecision(12))} %.`
  const candidates = quantity.displayUnits
    .map((symbol) => unitBySymbol(quantity.kind, symbol))
    .filter((unit) => unit !== null)
  const inRange = candidates.filter((unit) => withinRange(toSi(number, unit), quantity))
  const offered = (inRange.length > 0 ? inRange : candidates).map((unit) => withUnit(digits, unit))
  return `Which unit? Write ${offered.join(' or ')}.`
}

/** The fault of a bare number. */
export const unitMissing = (digits: string, number: number, quantity: Quantity): Reading<never> =>
  faulty('no-unit', whichUnit(digits, number, quantity))

/**
 * Reads a plainly written number with its unit, and nothing else. `borrowed` stands in for a unit that is written
 * once for two numbers, as in `103.2 ± 0.3 mm`.
 */
export const readSingle = (
  text: string,
  quantity: Quantity,
  borrowed: Unit | null = null,
): Reading<Written> => {
  const found = leadingNumber(text)
  if (!found.ok) return found
  const { number, text: digits, rest } = found.value
  if (rest === '' && borrowed === null) return unitMissing(digits, number.value, quantity)
  const unit = rest === '' && borrowed !== null ? read(borrowed) : unitNamed(quantity.kind, rest)
  if (!unit.ok) return unit
  return read({ value: toSi(number.value, unit.value), number, digits, unit: unit.value })
}
