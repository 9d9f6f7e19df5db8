import { fromSi, type Kind, toSi, type Unit as UnitRow, unitBySymbol } from '#basis/unitTable.ts'
import type { Unit } from '#proof/metrics/formulas.ts'

/** How a unit of the protocol is shown, and its second unit where the trade has two. */
interface Shown {
  readonly symbol: string
  readonly times: number
  readonly other: { readonly symbol: string; readonly times: number } | null
}

const row = (kind: Kind, symbol: string): UnitRow => {
  const found = unitBySymbol(kind, symbol)
  if (found === null) throw new Error(`No unit ${symbol} of ${kind}`)
  return found
}

/** What one of the first unit is in the second. */
const times = (kind: Kind, from: string, to: string): number =>
  fromSi(toSi(1, row(kind, from)), row(kind, to))

const OUNCES = times('mass', 'g', 'oz')
const BTU = times('energy', 'kJ', 'Btu')
/** Of a quart in a litre: what is so much a litre is so much less a quart. */
const A_QUART = 1 / times('volume', 'L', 'US qt')

const plain = (symbol: string, by = 1): Shown => ({ symbol, times: by, other: null })
const twice = (symbol: string, other: string, by: number): Shown => ({
  symbol,
  times: 1,
  other: { symbol: other, times: by },
})

/** Of the units that metrics come in; a share is shown in points of a hundred, a ratio as it is. */
const SHOWN: Readonly<Record<Unit, Shown>> = {
  g: twice('g', 'oz', OUNCES),
  '°C': plain('°C'),
  min: plain('min'),
  'kJ/kg': twice('kJ/kg', 'Btu/lb', times('specificEnergy', 'kJ/kg', 'Btu/lb')),
  kJ: twice('kJ', 'Btu', BTU),
  '1': plain('%', 100),
  'g/min': twice('g/min', 'lb/h', times('massFlow', 'g/min', 'lb/h')),
  W: twice('W', 'Btu/h', times('power', 'W', 'Btu/h')),
  'g/L': twice('g/L', 'oz/US qt', OUNCES * A_QUART),
  'kJ/L': twice('kJ/L', 'Btu/US qt', BTU * A_QUART),
}

/** Keys of metrics that are ratios, not shares. */
const RATIOS = new Set(['turndown'])

/** What is needed of a metric to write an amount of it. */
export interface Amount {
  readonly key: string
  readonly unit: Unit
}

const shownOf = ({ key, unit }: Amount): Shown => (RATIOS.has(key) ? plain('') : SHOWN[unit])

/** Written to a power of ten, without -0 and with the decimals of the step. */
const toStep = (value: number, step: number): string => {
  const text = (Math.round(value / step) * step).toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9)))
  return /^-[0.]+$/.test(text) ? text.slice(1) : text
}

/** So finely that what it may be off has a figure or two (two below 3 of the first); three figures of the value where that is not known. */
const stepFor = (values: readonly number[], doubt: number): number => {
  const size = Math.max(...values.map(Math.abs), 1e-9)
  const finest = 10 ** (Math.floor(Math.log10(size)) - 3)
  return doubt > 0 && Number.isFinite(doubt)
    ? Math.max(10 ** Math.floor(Math.log10(doubt / 3) + 1e-9), finest)
    : 10 ** (Math.floor(Math.log10(size)) - 2)
}

const isNothing = (text: string): boolean => !/[1-9]/.test(text)

/** An end of a span that would read as nothing, and is not, makes the step one figure finer. */
const finerFor = (values: readonly number[], step: number): number =>
  values.length > 1 && values.some((value) => value !== 0 && isNothing(toStep(value, step)))
    ? step / 10
    : step

/** The same values in one system of units. */
interface InOne {
  readonly unit: string
  readonly figures: readonly string[]
}

/** In the first system, and in the second where the trade has two: no coarser there, so that the two read alike. */
const inEach = (
  of: Amount,
  values: readonly number[],
  doubt: number,
  difference: boolean,
): readonly InOne[] => {
  const { symbol, times: by, other } = shownOf(of)
  const one = (unit: string, scaled: readonly number[], step: number): InOne => ({
    unit: difference && unit === '%' ? 'points' : unit,
    figures: scaled.map((value) => toStep(value, step)),
  })
  const first = values.map((value) => value * by)
  const step = finerFor(first, stepFor(first, doubt * by))
  if (other === null) return [one(symbol, first, step)]
  const second = first.map((value) => value * other.times)
  const as = 10 ** Math.floor(Math.log10(step * other.times) + 1e-9)
  return [one(symbol, first, step), one(other.symbol, second, finerFor(second, as))]
}

const bracketed = ([first = '', second]: readonly string[]): string =>
  second === undefined ? first : `${first} (${second})`

const withUnit = (figure: string, unit: string): string => (unit === '' ? figure : `${figure} ${unit}`)

/** Figures in both systems, joined by `join`: `0.2 and 3.6 min`, `5 and 12 g (0.18 and 0.42 oz)`. */
const inBoth = (
  of: Amount,
  values: readonly number[],
  doubt: number,
  join: string,
  difference: boolean,
): string =>
  bracketed(
    inEach(of, values, doubt, difference).map(({ unit, figures }) => {
      const same = figures.every((figure) => figure === figures[0])
      return withUnit(same ? (figures[0] as string) : figures.join(join), unit)
    }),
  )

/** A value as finely as its `doubt` deserves: `7.4 min`, `182 W (620 Btu/h)`, `23.1 %`. */
export const amountText = (of: Amount, value: number, doubt: number): string =>
  inBoth(of, [value], doubt, '', false)

/** How far two values lie apart: `1.9 min`, `3.1 points` of a share. */
export const differenceText = (of: Amount, value: number, doubt: number): string =>
  inBoth(of, [value], doubt, '', true)

/** Both ends of what a difference may be, written to one step: `1.2 min` and `0.02 min`. */
export const endTexts = (of: Amount, low: number, high: number, doubt: number): readonly [string, string] => {
  const each = inEach(of, [Math.abs(low), Math.abs(high)], doubt, true)
  const end = (i: 0 | 1): string =>
    bracketed(each.map(({ unit, figures }) => withUnit(figures[i] ?? '', unit)))
  return [end(0), end(1)]
}

/** From one difference to another: `0.2 and 3.6 min` for `join` “ and ”. */
export const spanText = (of: Amount, low: number, high: number, join: string, doubt: number): string =>
  inBoth(of, [low, high], doubt, join, true)

/** From one value to another: `7.1 to 8.3 min`. */
export const rangeText = (of: Amount, low: number, high: number, doubt = (high - low) / 2): string =>
  inBoth(of, [low, high], doubt, ' to ', false)

/** Whether a difference would be written as nothing. */
export const roundsToNothing = (of: Amount, value: number, doubt: number): boolean =>
  isNothing(differenceText(of, value, doubt).replace(/\D+$/, ''))
