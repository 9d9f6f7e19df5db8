import { DRY_AIR_GAS_CONSTANT, STANDARD_ATMOSPHERE } from '#basis/constants.ts'
import type { ValidRange } from '#science/heat/range.ts'
import {
  humidityRatio,
  type MoistAir,
  moistAirDensity,
  saturatedVapourPressure,
  VAPOUR_GAS_CONSTANT,
} from '#science/weather/moistAir.ts'

/** Shah's number in the units of his paper: kg/(m² h) with densities in kg/m³ [kg^⅔/(m h)]. */
const SHAH = 35
/** Below this density difference the layer hardly stirs by itself; his number is then 40 [kg/m³]. */
const HARDLY_STIRS = 0.02

/**
 * What the formula was compared with: pools of 0.07–425 m², water of 7–94 °C. A pot's 0.01–0.03 m² is
 * smaller.
 */
export const EVAPORATION_RANGE: ValidRange = {
  of: 'evaporation from the open pot',
  quantity: 'water °C',
  from: 7,
  to: 94,
}

/**
 * Water that leaves an open, still surface below boiling into still air [kg/(m² s)]. Shah 2002 (1992), from
 * the analogy of heat and mass: E = 35 ρ_w (ρ_a − ρ_w)^⅓ (W_w − W_a) kg/(m² h), ρ_w dry air and W_w humidity
 * at the water's temperature, saturated; mean deviation 18 % over eleven sources of data [bib:shah2002]. The
 * formula from memory, its range from the abstract. In thin air vapour diffuses faster: (p₀/p)^⅔, derived
 * here from h ∝ (g Δρ/ρ D²/ν)^⅓.
 *
 * At the boiling point it stays finite (about 4.9 g/(m² s), 11 kW/m²): what the water takes up beyond it
 * boils away. Zero where water would condense. Above the boiling point, where no water is, the curve merely
 * runs on.
 */
export const evaporationRate = (waterTemperature: number, air: MoistAir): number => {
  const vapour = saturatedVapourPressure(waterTemperature)
  const vapourDensity = vapour / (VAPOUR_GAS_CONSTANT * waterTemperature)
  const dryDensity = Math.max(0, air.pressure - vapour) / (DRY_AIR_GAS_CONSTANT * waterTemperature)
  // ρ_w W_w is the vapour's own density: the form that does not divide by zero at the boiling point.
  const drive = vapourDensity - dryDensity * humidityRatio(air)
  if (drive <= 0) return 0
  const lighter = moistAirDensity(air) - (dryDensity + vapourDensity)
  const stirring = lighter >= HARDLY_STIRS ? SHAH * Math.cbrt(lighter) : hardlyStirring(lighter)
  return (stirring * drive * (STANDARD_ATMOSPHERE / air.pressure) ** (2 / 3)) / 3600
}

/**
 * 40 in place of 35 below 0.02 kg/m³, joined so that nothing jumps there. Cold water under warm air
 * (`lighter` below zero) lies still: Shah's data end; a thin remainder by its size stands for the stray
 * draughts of a room.
 */
const hardlyStirring = (lighter: number): number => {
  const joint = SHAH * Math.cbrt(HARDLY_STIRS)
  const size = Math.max(0, lighter)
  // Straight from 40·(0.001)^⅓ at rest to Shah's curve at the joint.
  const rest = 40 * 0.1
  return rest + ((joint - rest) * size) / HARDLY_STIRS
}
