/** Tin melts at 231.9 °C; from there on the bright coat runs off and the steel under it oxidises [K]. */
export const TIN_MELTS = 505.05

/** Tinned sheet, bright [1]; oxidised steel, 125–525 °C, 0.78–0.82 [1]: thermal-camera tables, see `test/reference/emissivity.json`. */
const BRIGHT = 0.064
const OXIDISED = 0.8

/** Over how many kelvin the change from bright to oxidised is spread in a new can; from memory, for a smooth law. */
const SPREAD = 40

/**
 * Emissivity of a tinplate wall at a temperature [1]. `burntOff` is a can that has been through a fire: oxidised for
 * good. A new can is bright until its tin melts; the step is smoothed over ±40 K.
 */
export const tinplateEmissivity = (temperature: number, burntOff: boolean): number => {
  if (burntOff) return OXIDISED
  const share = 1 / (1 + Math.exp(-(temperature - TIN_MELTS) / (SPREAD / 4)))
  return BRIGHT + (OXIDISED - BRIGHT) * share
}
