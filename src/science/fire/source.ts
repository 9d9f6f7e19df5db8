import type { Coefficients } from '#science/coefficients.ts'
import type { FrontModel, FrontOutcome } from './front.ts'

/** Whatever glows in the bed and makes gas of the air that comes to it: the front in raw fuel, or the char at last. */
export interface FrontSource {
  /** The front belongs to the source and may be overwritten the next time. `velocity` is the superficial velocity of the air [m/s], `airTemperature` its temperature [K]. */
  close(velocity: number, airTemperature: number): FrontOutcome
}

/** Superficial velocity below which the straight part of the front's law holds, and where the gas is best [m/s]. */
const SLOW_VELOCITY = 0.03
const BEST_VELOCITY = 0.09

/** Moisture that the air ratio is given for, wet basis [1]. */
const USUAL_MOISTURE = 0.1
/** A front with less air than this cannot be told from smouldering [kg/kg]. */
const LEAST_AIR = 0.8

/**
 * Primary air that turns a kilogram of dry fuel, rising from the straight part to the best gas, and with the water that the
 * front has to boil off [kg/kg].
 */
export const airPerFuel = (velocity: number, moisture: number, coefficients: Coefficients): number => {
  const share = Math.min(1, Math.max(0, (velocity - SLOW_VELOCITY) / (BEST_VELOCITY - SLOW_VELOCITY)))
  const dry =
    coefficients.airPerFuelSlow + share * (coefficients.airPerFuelBest - coefficients.airPerFuelSlow)
  return Math.max(LEAST_AIR, dry + coefficients.airPerFuelMoisture * (moisture - USUAL_MOISTURE))
}

/** The front that eats down through raw fuel. */
export const rawFuelSource = (
  model: FrontModel,
  moisture: number,
  coefficients: Coefficients,
): FrontSource => ({
  close: (velocity, airTemperature) =>
    model.closeAgain(airPerFuel(velocity, moisture, coefficients), airTemperature),
})
