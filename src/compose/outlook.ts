import { orThrow } from '#basis/problem.ts'
import type { Outlook } from '#craft/shop/outlook.ts'
import type { Course } from '#science/answers/course.ts'
import { predictionFigures } from '#science/answers/predictionBands.ts'
import { type PredictOptions, predictSteady } from '#science/steady/predict.ts'
import type { Stove } from '#stove/model.ts'

/** A stove's steady burn, solved, as the plain figures that the craft rooms take. */
export const outlookOf = (stove: Stove, options: PredictOptions = {}): Outlook => {
  const outcome = orThrow(predictSteady(stove, options))
  if (outcome.kind === 'no burn')
    return {
      course: 'does not burn' satisfies Course,
      reason: outcome.noBurn.sentence,
      figures: null,
    }
  const { prediction } = outcome
  const course: Course = prediction.stops === null ? prediction.halfway.regime : 'goes out before the floor'
  const { firepower, duration, fuelRate, secondaryToPrimary, ...shares } = predictionFigures(prediction)
  const { primaryAirShare, secondaryAirShare, tertiaryAirShare } = shares
  return {
    course,
    reason: prediction.stops?.sentence ?? null,
    figures: {
      firepower,
      duration,
      fuelRate,
      primaryAirShare,
      secondaryAirShare,
      tertiaryAirShare,
      secondaryToPrimary,
    },
  }
}

/** Burns cleanly to the floor. */
export const isGood = ({ course }: Outlook): boolean => course === ('clean' satisfies Course)
