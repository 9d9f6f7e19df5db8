import { filmAir } from '#science/heat/filmAir.ts'
import { laminarStreamNusselt, together } from '#science/heat/forcedConvection.ts'
import { greyFlux } from '#science/heat/greyRadiation.ts'
import { discCoefficient } from '#science/heat/horizontalPlate.ts'
import type { MoistAir } from '#science/weather/moistAir.ts'
import { evaporationRate } from './evaporation.ts'
import { bottomArea, type Pot } from './pot.ts'
import { evaporationHeat } from './water.ts'

/** What goes up from a pot, over its lid or its open water. */
export interface PotTop {
  /** Still or moving air over it [W]. */
  readonly convection: number
  /** [W] */
  readonly radiation: number
  /**
   * Steam that escapes from the surface [W] and [kg/s]; at the boiling point the bubbles' steam comes on top.
   */
  readonly evaporation: number
  readonly steam: number
}

/** Emissivity of water, 0.95–0.96 any text. */
const WATER_EMISSIVITY = 0.95
/** A used lid, dull metal; from memory, 0.1–0.6. */
const LID_EMISSIVITY = 0.3

export interface TopCoefficients {
  readonly potEvaporation: number
  readonly potLidLeak: number
  readonly potLidWarmth: number
}

/** Heat that leaves a pot upward at a water temperature [W]. `windSpeed` is the wind at the pot [m/s]. */
export const potTop = (
  pot: Pot,
  waterTemperature: number,
  air: MoistAir,
  windSpeed: number,
  coefficients: TopCoefficients,
): PotTop => {
  const area = bottomArea(pot)
  const ambient = air.temperature
  const surface = pot.lid
    ? ambient + coefficients.potLidWarmth * (waterTemperature - ambient)
    : waterTemperature
  const film = filmAir((surface + ambient) / 2, air.pressure)
  const forced =
    (laminarStreamNusselt((windSpeed * pot.diameter) / film.kinematicViscosity, film.prandtl) *
      film.conductivity) /
    pot.diameter
  const free = discCoefficient(surface, ambient, pot.diameter, 'up', air.pressure)
  const steam =
    evaporationRate(waterTemperature, air) *
    area *
    coefficients.potEvaporation *
    (pot.lid ? coefficients.potLidLeak : 1)
  return {
    convection: together(forced, free) * area * (surface - ambient),
    radiation: greyFlux(pot.lid ? LID_EMISSIVITY : WATER_EMISSIVITY, surface, ambient) * area,
    evaporation: steam * evaporationHeat(waterTemperature),
    steam,
  }
}
