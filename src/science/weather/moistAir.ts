import { DRY_AIR_GAS_CONSTANT, MOLAR_GAS_CONSTANT } from '#basis/constants.ts'
import { MOLAR_MASS } from '#science/gas/thermo.ts'
import { SATURATION_FROM, saturationPressure } from '#science/pot/saturation.ts'

/** Specific gas constant of water vapour, R/M [J/(kg K)]. */
export const VAPOUR_GAS_CONSTANT = MOLAR_GAS_CONSTANT / MOLAR_MASS.H2O

/**
 * Pressure of water vapour in saturated air, −40 to 374 °C [Pa]. Above freezing IF97; below, over supercooled
 * water as weather services count humidity, Magnus' form with the constants of Alduchov & Eskridge 1996 from
 * memory: within 0.4 %.
 */
export const saturatedVapourPressure = (temperature: number): number => {
  if (temperature >= SATURATION_FROM) return saturationPressure(temperature)
  const t = temperature - 273.15
  return 610.94 * Math.exp((17.625 * t) / (t + 243.04))
}

/** Air as it lies over the stove. */
export interface MoistAir {
  /** [K] */
  readonly temperature: number
  /** [Pa] */
  readonly pressure: number
  /** Relative humidity, 0–1 [1]. */
  readonly humidity: number
}

/** Partial pressure of water vapour [Pa]. */
export const vapourPressure = ({ temperature, humidity }: MoistAir): number =>
  humidity * saturatedVapourPressure(temperature)

/**
 * Density of moist air, dry air and vapour each as an ideal gas [kg/m³]. Within 0.1 % of the CIPM-2007
 * equation at −20 to 40 °C near 1 bar [bib:picard2008].
 */
export const moistAirDensity = (air: MoistAir): number => {
  const vapour = vapourPressure(air)
  return ((air.pressure - vapour) / DRY_AIR_GAS_CONSTANT + vapour / VAPOUR_GAS_CONSTANT) / air.temperature
}

/** Water vapour per dry air [kg/kg]. */
export const humidityRatio = (air: MoistAir): number => {
  const vapour = vapourPressure(air)
  return ((DRY_AIR_GAS_CONSTANT / VAPOUR_GAS_CONSTANT) * vapour) / (air.pressure - vapour)
}
