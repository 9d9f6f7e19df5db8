import { calm, type Wind } from './weather/wind.ts'

/** Where and when the stove burns. */
export interface Site {
  /** Air temperature [K]. */
  readonly temperature: number
  /** Air pressure [Pa]. */
  readonly pressure: number
  /** At the stove's own height. */
  readonly wind: Wind
}

/** 20 °C at sea level, no wind. */
export const mildDay: Site = { temperature: 293.15, pressure: 101325, wind: calm }
