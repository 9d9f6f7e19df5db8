import { orThrow } from '#basis/problem.ts'
import type { Bands, SampledRun } from '#science/bands/bands.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { type PredictOptions, predictSteady } from '#science/steady/predict.ts'
import type { Prediction } from '#science/steady/prediction.ts'
import type { Stove } from '#stove/model.ts'
import type { Course } from './course.ts'
import { type Progress, sampled, silent } from './sampled.ts'

/** What bands are drawn of. Those of one moment are of the front half way down. */
const PREDICTION_BAND_KEYS = [
  'firepower',
  'firepowerHighest',
  'firepowerLowest',
  'duration',
  'charLeft',
  'fuelRate',
  'primaryAirShare',
  'secondaryAirShare',
  'tertiaryAirShare',
  'secondaryToPrimary',
  'airRatioFlame',
  'airRatioOutlet',
  'flameTemperature',
] as const
export type PredictionBandKey = (typeof PREDICTION_BAND_KEYS)[number]
export type PredictionBands = Bands<PredictionBandKey>

export type PredictionFigures = Readonly<Record<PredictionBandKey, number>>

/** The figures of a prediction that have bands, by their keys; SI units, as `Prediction` says of each. */
export const predictionFigures = ({ woodGas, halfway }: Prediction): PredictionFigures => {
  const { air, airRatio, temperature } = halfway
  const all = air.primary + air.secondary + air.tertiary
  return {
    firepower: woodGas.firepower,
    firepowerHighest: woodGas.firepowerHighest,
    firepowerLowest: woodGas.firepowerLowest,
    duration: woodGas.duration,
    charLeft: woodGas.charLeft,
    fuelRate: halfway.fuelRate,
    primaryAirShare: air.primary / all,
    secondaryAirShare: air.secondary / all,
    tertiaryAirShare: air.tertiary / all,
    secondaryToPrimary: air.secondaryToPrimary,
    airRatioFlame: airRatio.flame,
    airRatioOutlet: airRatio.outlet,
    flameTemperature: temperature.flame,
  }
}

/** The same prediction with so many sets of coefficients; null for none. */
export const predictionBands = (
  stove: Stove,
  options: PredictOptions,
  samples: number,
  progress: Progress = silent,
): PredictionBands | null => {
  const run = (coefficients: Coefficients): SampledRun<PredictionBandKey> => {
    const outcome = orThrow(predictSteady(stove, { ...options, coefficients }))
    if (outcome.kind === 'no burn') return { outcome: 'does not burn' satisfies Course, figures: {} }
    const { prediction } = outcome
    const course: Course = prediction.stops === null ? prediction.halfway.regime : 'goes out before the floor'
    return { outcome: course, figures: predictionFigures(prediction) }
  }
  return sampled(samples, PREDICTION_BAND_KEYS, run, progress)
}
