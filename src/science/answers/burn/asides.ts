import { boilAnswer } from '#science/answers/figures.ts'
import { type TripAnswer, tripFuel } from '#science/answers/trip.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { predictSteady } from '#science/steady/predict.ts'
import type { Moment } from '#science/steady/prediction.ts'
import type { Fired } from './fired.ts'
import type { BurnSetup } from './setup.ts'

/** The steady burn with the front half way down and the damper as the file has it, or null where there is none. */
export const halfwayOf = (
  { stove, site, moisture, burntOff }: BurnSetup,
  coefficients: Coefficients,
): Moment | null => {
  const outcome = predictSteady(stove, {
    site,
    coefficients,
    burntOff,
    ...(moisture === null ? {} : { moisture }),
  })
  return outcome.ok && outcome.value.kind === 'prediction' ? outcome.value.prediction.halfway : null
}

/** Fuel for the trip that was asked for, or null for none. */
export const tripOf = (
  { trip, wish, site }: BurnSetup,
  { burn, firing, figures }: Fired,
  coefficients: Coefficients,
): TripAnswer | null => {
  if (trip === null) return null
  const { days, boilsADay, litresABoil } = trip
  const boil = boilAnswer(burn, firing, wish, litresABoil, site, coefficients)
  return tripFuel({ ...figures, boils: [boil] }, firing, days, boilsADay, litresABoil)
}
