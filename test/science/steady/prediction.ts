import { orThrow } from '#basis/problem.ts'
import { type PredictOptions, predictSteady } from '#science/steady/predict.ts'
import type { Prediction } from '#science/steady/prediction.ts'
import type { Stove } from '#stove/model.ts'

/** The prediction of a stove that is known to burn. */
export const predictionOf = (stove: Stove, options: PredictOptions = {}): Prediction => {
  const outcome = orThrow(predictSteady(stove, options))
  if (outcome.kind === 'no burn') throw new Error(`${outcome.noBurn.code}: ${outcome.noBurn.sentence}`)
  return outcome.prediction
}

/** Numbers anywhere in a plain object that are not finite, by their path. */
export const notFinite = (value: unknown, path = ''): string[] => {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`]
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`))
}
