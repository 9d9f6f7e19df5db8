import type { Quantity } from '../quantities.ts'
import { fromSi, toSi, type Unit, unitBySymbol } from '../unitTable.ts'
import { faulty, type Reading, read } from './fault.ts'

/** A limit that came through 25.4 or 9/5 may differ from the table's in the last bit. */
const SLACK = 1e-12

export const withinRange = (value: number, { min, max }: Quantity): boolean =>
  value >= min - SLACK * Math.abs(min) && value <= max + SLACK * Math.abs(max)

const usualUnit = (quantity: Quantity): Unit | null => {
  const symbol = quantity.displayUnits[0]
  return symbol === undefined ? null : unitBySymbol(quantity.kind, symbol)
}

/** To three decimals and never outside the range, so that what a message allows is allowed. */
const limit = (value: number, unit: Unit | null, inward: (x: number) => number): string => {
  const converted = unit === null ? value : fromSi(value, unit)
  return String(inward(Number((converted * 1000).toPrecision(12))) / 1000)
}

/** A number with its unit; no space before the degree sign of an angle. */
export const withUnit = (number: string, unit: Unit | null): string =>
  unit === null ? number : unit.symbol === '°' ? `${number}°` : `${number} ${unit.symbol}`

const withArticle = (name: string): string => (/^[aeiou]/i.test(name) ? `an ${name}` : `a ${name}`)

/** What may stand in a field of this quantity, as the middle of a sentence, in the unit the maker used. */
export const allowedRange = (quantity: Quantity, unit: Unit | null = usualUnit(quantity)): string => {
  const { kind, name, min, max } = quantity
  const from = limit(min, unit, Math.ceil)
  const to = limit(max, unit, Math.floor)
  const noun = kind === 'count' ? `a whole ${name}` : withArticle(name)
  return `${noun} from ${withUnit(from, unit)} to ${withUnit(to, unit)}`
}

const METRIC_LENGTHS: readonly string[] = ['mm', 'cm', 'm']

/** The same number in other usual units of the quantity where that would be in range: the likely slip. */
const meantInstead = (written: string, value: number, unit: Unit, quantity: Quantity): readonly string[] =>
  quantity.displayUnits
    .map((symbol) => unitBySymbol(quantity.kind, symbol))
    .filter((other): other is Unit => other !== null && other.symbol !== unit.symbol)
    // Nobody measures 6 3/4 mm.
    .filter((other) => !(written.includes('/') && METRIC_LENGTHS.includes(other.symbol)))
    .filter((other) => withinRange(toSi(fromSi(value, unit), other), quantity))
    .map((other) => withUnit(written, other))

/** The value, if the table allows it [SI unit of the quantity]. */
export const checkedRange = (
  value: number,
  quantity: Quantity,
  written: { readonly number: string; readonly unit: Unit | null },
): Reading<number> => {
  if (withinRange(value, quantity)) return read(value)
  const { unit } = written
  const meant = unit === null ? [] : meantInstead(written.number, value, unit, quantity)
  const measure = quantity.kind === 'count' ? 'Count again' : 'Measure again'
  return faulty(
    'range',
    meant.length > 0
      ? `If ${meant.join(' or ')} was meant, write that.`
      : value < 0 && quantity.min >= 0
        ? 'Take the minus sign away.'
        : `${measure}, or look for a slipped decimal point.`,
    allowedRange(quantity, unit),
  )
}
