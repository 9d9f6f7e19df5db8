import { DRY_AIR_GAS_CONSTANT } from '#basis/constants.ts'
import { AIR, specificHeat } from '#science/gas/blend.ts'
import { airConductivity, airViscosity } from '#science/gas/transport.ts'

/**
 * What convection needs to know of air at a film temperature. Stands for flue gas as well: wood gas burnt
 * with twice the air it needs is three quarters nitrogen still, its conductivity and viscosity a few per cent
 * from air's, its heat capacity 5 % above.
 */
export interface FilmAir {
  /** [kg/m³] */
  readonly density: number
  /** [Pa s] */
  readonly viscosity: number
  /** [W/(m K)] */
  readonly conductivity: number
  /** [J/(kg K)] */
  readonly specificHeat: number
  /** [m²/s] */
  readonly kinematicViscosity: number
  readonly prandtl: number
}

/** Air at a temperature [K], 200–2000 K, and a pressure near 1 bar [Pa]. */
export const filmAir = (temperature: number, pressure: number): FilmAir => {
  const density = pressure / (DRY_AIR_GAS_CONSTANT * temperature)
  const viscosity = airViscosity(temperature)
  const conductivity = airConductivity(temperature)
  const heat = specificHeat(AIR, temperature)
  return {
    density,
    viscosity,
    conductivity,
    specificHeat: heat,
    kinematicViscosity: viscosity / density,
    prandtl: (viscosity * heat) / conductivity,
  }
}
