import { formatQuantity } from '#basis/text/format.ts'

/** A quantity in its two usual units: `1.22 kW (4160 Btu/h)`. */
export const twice = (value: number, key: Parameters<typeof formatQuantity>[1], other: string): string =>
  `${formatQuantity(value, key)} (${formatQuantity(value, key, other)})`

/** Whole, and never `-0`. */
export const whole = (value: number): string => String(Math.round(value) + 0)

/** So many decimals, and never `-0.00`. */
export const decimals = (value: number, digits: number): string => {
  const text = value.toFixed(digits)
  return /^-[0.]+$/.test(text) ? text.slice(1) : text
}

export const celsius = (kelvin: number): string => whole(kelvin - 273.15)
export const fahrenheit = (kelvin: number): string => whole((kelvin - 273.15) * 1.8 + 32)

/** A temperature as exactly as a stove is known: `742 °C (1368 °F)`. */
export const degrees = (kelvin: number): string => `${celsius(kelvin)} °C (${fahrenheit(kelvin)} °F)`

export const percent = (share: number): string => `${whole(100 * share)} %`
