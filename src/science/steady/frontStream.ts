import type { Front } from '#science/fire/front.ts'
import { AIR, specificEnthalpy } from '#science/gas/blend.ts'
import type { FrontPlace } from './frontPlace.ts'

/** What leaves the front's stretch of the bed: fresh gas, air that passed by, gas burnt before [kg/s]. */
export interface FrontStream {
  made: number
  passedAir: number
  through: number
  /** Enthalpy of the three together [W]. */
  heat: number
}

/** Sets it for `net` kilograms a second that enter from below. */
export const setFrontStream = (stream: FrontStream, place: FrontPlace, front: Front, net: number): void => {
  const { airShare, active, airTemperature } = place
  stream.made = (net * airShare * active * front.gas) / front.airPerFuel
  stream.passedAir = net * airShare * (1 - active)
  stream.through = net * (1 - airShare)
  stream.heat =
    stream.made * specificEnthalpy(front.unburnt, front.temperature) +
    stream.passedAir * specificEnthalpy(AIR, airTemperature) +
    stream.through * specificEnthalpy(front.burnt, airTemperature)
}
