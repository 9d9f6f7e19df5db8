import type { Coefficients } from '#science/coefficients.ts'
import type { FrontModel, FrontOutcome } from './front.ts'

/** Whatever glows in the bed and makes gas of the air that comes to it: the front in raw fuel, or the char at last. */
export interface FrontSource {
  /** `velocity` is the superficial velocity of the air [m/s], `airTemperature` its temperature [K]. */
  close(velocity: number, airTemperature: number): FrontOutcome
}

/** Superficial velocity below which the straight part of the front's law holds, and where the gas is best [m/s]. */
const SLOW_VELOCITY = 0.03
const BEST_VELOCITY = 0.09

/** Primary air that turns a kilogram of dry fuel, rising from the straight part to the best gas [kg/kg]. */
export const airPerFuel = (velocity: number, coefficients: Coefficients): number => {
  const share = Math.min(1, Math.max(0, (velocity - SLOW_VELOCITY) / (BEST_VELOCITY - SLOW_VELOCITY)))
  return coefficients.airPerFuelSlow + share * (coefficients.airPerFuelBest - coefficients.airPerFuelSlow)
}

/** The front that eats down through raw fuel. */
export const rawFuelSource = (model: FrontModel, coefficients: Coefficients): FrontSource => ({
  close: (velocity, airTemperature) => model.close(airPerFuel(velocity, coefficients), airTemperature),
})
