import { type QuantityKey, quantity } from '#basis/quantities.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { withUnit } from '#basis/text/range.ts'
import { fromSi, toSi, type Unit, unitBySymbol } from '#basis/unitTable.ts'
import type { Band } from '#science/bands/bands.ts'

const unitOf = (key: QuantityKey, symbol: string | undefined): Unit | null => {
  const { kind, displayUnits } = quantity(key)
  const wanted = symbol ?? displayUnits[0]
  return wanted === undefined ? null : unitBySymbol(kind, wanted)
}

/** Written to a step, a power of ten: 2.0 to a tenth, 6190 to tens. */
const toStep = (value: number, step: number): string => {
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  const text = (Math.round(value / step) * step).toFixed(decimals)
  return Number(text) === 0 ? text.replace('-', '') : text
}

const tenPower = (value: number): number => Math.floor(Math.log10(Math.max(Math.abs(value), 1e-12)) + 1e-12)

const HOUR = 3600
const MINUTE = 60
const wholeMinutes = (seconds: number, key: QuantityKey): string =>
  formatQuantity(Math.round(seconds / MINUTE) * MINUTE, key)

/** A figure as it is shown in its usual unit: what a second unit stands beside has to say the same. */
export const asShown = (value: number, key: QuantityKey): number => {
  const unit = unitOf(key, undefined)
  const shown = unit === null ? value : fromSi(value, unit)
  const step = 10 ** (tenPower(shown) - 2)
  const rounded = Math.round(shown / step) * step
  return unit === null ? rounded : toSi(rounded, unit)
}

/** Three figures, before the point as well: 6190 Btu/h, not 6191. Whole minutes from an hour on. */
export const figureText = (value: number, key: QuantityKey, symbol?: string): string => {
  if (quantity(key).kind === 'time' && symbol === undefined && value >= HOUR) return wholeMinutes(value, key)
  const unit = unitOf(key, symbol)
  const shown = unit === null ? value : fromSi(value, unit)
  const text = toStep(shown, 10 ** (tenPower(shown) - 2))
  return withUnit(text.includes('.') ? text.replace(/\.?0+$/, '') : text, unit)
}

/** A figure in its two usual units: `1.81 kW (6190 Btu/h)`. */
export const figureTwice = (value: number, key: QuantityKey, other: string): string =>
  `${figureText(value, key)} (${figureText(asShown(value, key), key, other)})`

/** `1.2 to 2.0 kW`: two figures of the width of the band, no finer. */
export const bandText = (
  { low, high }: Pick<Band, 'low' | 'high'>,
  key: QuantityKey,
  symbol?: string,
): string => {
  if (quantity(key).kind === 'time' && symbol === undefined && high >= HOUR)
    return `${wholeMinutes(low, key)} to ${wholeMinutes(high, key)}`
  const unit = unitOf(key, symbol)
  const [from, to] = [low, high].map((value) => (unit === null ? value : fromSi(value, unit))) as [
    number,
    number,
  ]
  // However narrow the band, four figures are enough.
  const step = 10 ** Math.max(tenPower(to - from) - 1, tenPower(to) - 3)
  const [first, last] = [toStep(from, step), toStep(to, step)]
  return first === last ? figureText(high, key, symbol) : `${first} to ${withUnit(last, unit)}`
}
