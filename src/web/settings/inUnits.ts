import type { QuantityKey } from '#basis/quantities.ts'
import { long } from '#basis/text/bothUnits.ts'
import { formatLength, formatQuantity } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import { asShown, figureText } from '#craft/told/band.ts'
import type { Units } from './settings.ts'

/** A length in the units that were chosen [from m]: `16 mm`, `5/8 in` or `16 mm (5/8 in)`. */
export const lengthIn = (length: number, units: Units): string => {
  if (units === 'both') return long(length)
  return units === 'mm'
    ? formatLength(length as Metres, { units: 'mm' })
    : formatQuantity(length, 'clearance', 'in')
}

/** Each kind of figure with its metric unit and the one of the other trade. */
const PAIRS = {
  firepower: ['kW', 'Btu/h'],
  massFlow: ['g/s', 'lb/h'],
  mass: ['g', 'oz'],
  wallTemperature: ['°C', '°F'],
  gasTemperature: ['°C', '°F'],
  flameTemperature: ['°C', '°F'],
  waterTemperature: ['°C', '°F'],
  ambientTemperature: ['°C', '°F'],
  windSpeed: ['m/s', 'mph'],
  altitude: ['m', 'ft'],
  waterVolume: ['L', 'US qt'],
  heat: ['MJ', 'Btu'],
} as const satisfies Partial<Record<QuantityKey, readonly [string, string]>>

export type PairedKey = keyof typeof PAIRS

/** The two units of a figure: metric, and the other. */
export const unitsOf = (key: PairedKey): readonly [metric: string, other: string] => PAIRS[key]

/** A figure in the units that were chosen, three digits: `1.81 kW`, `6190 Btu/h`, `1.81 kW (6190 Btu/h)`. */
export const figureIn = (value: number, key: PairedKey, units: Units): string => {
  const [metric, other] = PAIRS[key]
  if (units === 'mm') return figureText(value, key, metric)
  if (units === 'in') return figureText(value, key, other)
  return `${figureText(value, key, metric)} (${figureText(asShown(value, key), key, other)})`
}

/** No model knows more of a fire than two figures. */
const twoFigures = (value: number, key: PairedKey): number => {
  const shown = asShown(value, key)
  const step = 10 ** (Math.floor(Math.log10(Math.max(shown, 1e-12)) + 1e-12) - 1)
  return Math.round(shown / step) * step
}

/** A predicted figure in a line of words, to two figures of the metric unit: `1.8 kW (6140 Btu/h)`. */
export const aboutIn = (value: number, key: PairedKey, units: Units): string =>
  figureIn(twoFigures(value, key), key, units)

/** A predicted time in a line of words, to a minute [from s]. */
export const aboutTime = (seconds: number): string =>
  formatQuantity(Math.round(seconds / 60) * 60, 'burnTime')

/** The main unit that was chosen, and, of both, the other one for a second line. */
export const figureParts = (
  value: number,
  key: PairedKey,
  units: Units,
): readonly [main: string, beside: string | null] => {
  const [metric, other] = PAIRS[key]
  if (units === 'in') return [figureText(value, key, other), null]
  return [
    figureText(value, key, metric),
    units === 'both' ? figureText(asShown(value, key), key, other) : null,
  ]
}
