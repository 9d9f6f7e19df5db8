/** Tin melts at 231.9 °C [K]. */
export const TIN_MELTS = 505.05

/**
 * Tinned sheet at 24 °C [1]: thermal-camera tables, see `test/reference/emissivity.json`. A clean metal's
 * total emissivity grows about in proportion to its temperature (Hagen and Rubens, from memory).
 */
const BRIGHT = 0.064
const BRIGHT_AT = 297.15

/** Bare oxidised steel: temperature [K] and emissivity [1] from the same tables; straight lines between. */
const OXIDISED: readonly (readonly [number, number])[] = [
  [373.15, 0.74],
  [473.15, 0.79],
  [873.15, 0.8],
  [1500.15, 0.89],
]

/**
 * By here a new can has lost its shine altogether: molten tin runs together and alloys, the steel turns blue,
 * then grey; from memory [K].
 */
const DULL = 700

/** The same as temperatures, emissivities and slopes from each to the next, which inner loops read faster [K], [1], [1/K]. */
const OXIDISED_AT = Float64Array.from(OXIDISED, ([t]) => t)
const OXIDISED_EMISSIVITY = Float64Array.from(OXIDISED, ([, e]) => e)
const OXIDISED_SLOPE = Float64Array.from(OXIDISED, ([t, e], i) => {
  const [next, eNext] = OXIDISED[i + 1] ?? [t + 1, e]
  return (eNext - e) / (next - t)
})

const oxidised = (temperature: number): number => {
  let i = OXIDISED_AT.length - 1
  while (i > 0 && temperature <= (OXIDISED_AT[i] as number)) i--
  const over = Math.max(0, temperature - (OXIDISED_AT[i] as number))
  return (OXIDISED_EMISSIVITY[i] as number) + (OXIDISED_SLOPE[i] as number) * over
}

/**
 * Emissivity of a tinplate wall at a temperature [1]; tables 24–1227 °C, held at their ends beyond.
 * `burntOff` is a can that has been through a fire: oxidised for good, cold or hot. A new can is bright until
 * its tin melts and passes smoothly to oxidised by 430 °C; once there, it is a burnt-off can.
 */
export const tinplateEmissivity = (temperature: number, burntOff: boolean): number => {
  if (burntOff) return oxidised(temperature)
  const bright = (BRIGHT * Math.min(temperature, TIN_MELTS)) / BRIGHT_AT
  const s = Math.min(1, Math.max(0, (temperature - TIN_MELTS) / (DULL - TIN_MELTS)))
  const share = s * s * (3 - 2 * s)
  return bright + (oxidised(temperature) - bright) * share
}

/** Glowing char; from memory 0.8–0.95 [1]. */
export const CHAR_EMISSIVITY = 0.85
