import type { BurnFigures } from './figures.ts'
import type { Firing } from './run.ts'

/** Fuel for a trip. */
export interface TripAnswer {
  readonly days: number
  readonly boilsADay: number
  readonly litresABoil: number
  /** Fuel to carry or gather, as fired, a tenth more for relighting [kg]; null when it does not boil so much water. */
  readonly fuel: number | null
  /** Fillings of the fuel can, whole ones: a can is lit full [1]. */
  readonly fillings: number | null
  /** Space the fuel takes, tipped [m³]. */
  readonly volume: number | null
}

const SPARE = 1.1

/**
 * Fuel for so many days and boils. Every boil is a filling of its own: the fuel above the front cannot be topped up. A
 * filling may be smaller than the can holds; the fuel burnt until the boil is what counts, and what is left burns on.
 */
export const tripFuel = (
  figures: BurnFigures,
  firing: Firing,
  days: number,
  boilsADay: number,
  litresABoil: number,
): TripAnswer => {
  const wish = { days, boilsADay, litresABoil }
  const boil = figures.boils.find(({ litres }) => litres >= litresABoil && litres - litresABoil < 0.5)
  if (boil?.fuelPerLitre == null) return { ...wish, fuel: null, fillings: null, volume: null }
  const boils = days * boilsADay
  const fuel = boils * boil.fuelPerLitre * litresABoil * SPARE
  return {
    ...wish,
    fuel,
    fillings: boils * Math.ceil((boil.fuelPerLitre * litresABoil) / firing.charge),
    volume: fuel / firing.fuel.bulkDensity,
  }
}
