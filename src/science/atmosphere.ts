import { STANDARD_ATMOSPHERE, STANDARD_GRAVITY, STANDARD_TEMPERATURE } from '#basis/constants.ts'

/** Fall of temperature with height in the troposphere, ISO 2533 [K/m]. */
const LAPSE = 0.0065

/** Specific gas constant of air in ISO 2533:1975 and the US Standard Atmosphere 1976 [bib:ussa1976] [J/(kg K)]. */
const STANDARD_GAS_CONSTANT = 287.05287

/**
 * Pressure of the standard atmosphere at a geopotential altitude, −2000 to 11000 m [Pa].
 * p = p₀ (1 − L h/T₀)^(g/(R L)), ISO 2533:1975 [bib:ussa1976]. The day's weather moves it by some per cent.
 */
export const standardPressure = (altitude: number): number =>
  STANDARD_ATMOSPHERE *
  (1 - (LAPSE * altitude) / STANDARD_TEMPERATURE) ** (STANDARD_GRAVITY / (STANDARD_GAS_CONSTANT * LAPSE))
