import { orThrow } from '#basis/problem.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { stopsBlock } from '#compose/page/findings.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { predictionBands } from '#science/answers/predictionBands.ts'
import { type PredictionOutcome, predictSteady } from '#science/steady/predict.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Finding } from '#stove/model.ts'
import { type ConditionOptions, moistureOf, siteOf, withFuel } from '../conditions.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { stoveFrom } from '../input.ts'
import { predictionBlocks } from '../page/prediction.ts'
import { bandSets, watched } from '../sampling.ts'

export interface PredictCommandOptions extends ConditionOptions {
  readonly bands: string
  readonly json?: boolean
}

/** Not a good answer: it will smoulder, smoke, chill or go out, or it cannot be made. */
const codeOf = (outcome: PredictionOutcome, stops: readonly Finding[]): ExitCode =>
  outcome.kind === 'prediction' &&
  outcome.prediction.stops === null &&
  outcome.prediction.halfway.regime === 'clean' &&
  stops.length === 0
    ? EXIT.fine
    : EXIT.findings

export const predict = (env: Environment, file: string, options: PredictCommandOptions): ExitCode => {
  const sets = bandSets(options.bands)
  const site = siteOf(options)
  const moisture = moistureOf(options)
  const stove = withFuel(stoveFrom(env, file), options)
  const stops = checkStove(stove, null).filter(({ severity }) => severity === 'stop')
  const given = { site, ...(moisture === null ? {} : { moisture }) }
  const outcome = orThrow(predictSteady(stove, given))
  const bands =
    outcome.kind === 'prediction'
      ? watched(env, (progress) => predictionBands(stove, given, sets, progress))
      : null
  const code = codeOf(outcome, stops)
  if (options.json) {
    const answer = {
      format: 'tinwright/prediction@1',
      stove: stove.name,
      ...outcome,
      ...(outcome.kind === 'prediction' ? { bands } : {}),
      stopFindings: stops,
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  const blocks =
    outcome.kind === 'prediction'
      ? predictionBlocks(outcome.prediction, bands, env.width)
      : [wrap(`${stove.name} does not burn as drawn: ${outcome.noBurn.sentence}`, env.width)]
  env.out(
    page(
      stopsBlock(
        stops,
        'This stove cannot be made as it is drawn; what follows is of the drawing:',
        env.width,
      ),
      ...blocks,
      cautionBlock(env.width),
    ),
  )
  return code
}
