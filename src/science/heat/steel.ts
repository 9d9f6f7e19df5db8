/** Where EN 1993-1-2 gives a heat capacity: 20–1200 °C [K]. */
export const STEEL_HEAT_FROM = 293.15
export const STEEL_HEAT_TO = 1473.15

/**
 * Heat capacity of carbon steel, EN 1993-1-2 3.4.1.2 (read in public implementations) [bib:en1993]
 * [J/(kg K)]. 20–1200 °C; its polynomial is carried on below 20 °C, where it still falls as it should, its
 * last value above. The peak at 735 °C is the steel turning to austenite, 5000 J/(kg K).
 */
export const steelHeat = (temperature: number): number => {
  const t = temperature - 273.15
  if (t < 600) return 425 + t * (0.773 + t * (-1.69e-3 + t * 2.22e-6))
  if (t < 735) return 666 + 13002 / (738 - t)
  if (t < 900) return 545 + 17820 / (t - 731)
  return 650
}

/** Heat stored in steel above 20 °C: the integral of `steelHeat`, exact piece by piece [J/kg]. */
export const steelEnthalpy = (temperature: number): number => {
  const t = temperature - 273.15
  const low = (x: number): number => x * (425 + x * (0.773 / 2 + x * (-1.69e-3 / 3 + (x * 2.22e-6) / 4)))
  const start = low(20)
  if (t < 600) return low(t) - start
  const at600 = low(600) - start
  if (t < 735) return at600 + 666 * (t - 600) + 13002 * Math.log(138 / (738 - t))
  const at735 = at600 + 666 * 135 + 13002 * Math.log(138 / 3)
  if (t < 900) return at735 + 545 * (t - 735) + 17820 * Math.log((t - 731) / 4)
  return at735 + 545 * 165 + 17820 * Math.log(169 / 4) + 650 * (t - 900)
}

const COLD = 293.15
const HOT = 723.15

/**
 * Mean heat capacity of steel between 20 and 450 °C, over which most of a stove's tin is warmed: 540, of
 * `steelHeat` [bib:en1993] [J/(kg K)].
 */
export const MEAN_STEEL_HEAT = (steelEnthalpy(HOT) - steelEnthalpy(COLD)) / (HOT - COLD)
