import { BadInput, orThrow } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { fuelOf } from '#science/fuel/charge.ts'
import { mildDay, type Site } from '#science/site.ts'
import { type PredictionOutcome, predictSteady } from '#science/steady/predict.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Finding, Stove } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { optionQuantity, problemOf, stoveFrom } from '../input.ts'
import { cautionBlock } from '../page/cautions.ts'
import { stopsBlock } from '../page/findings.ts'
import { predictionBlocks } from '../page/prediction.ts'
import { page, wrap } from '../page/text.ts'

export interface PredictCommandOptions {
  readonly fuel?: string
  readonly moisture?: string
  readonly temperature?: string
  readonly altitude?: string
  readonly pressure?: string
  readonly wind?: string
  readonly windFrom?: string
  readonly json?: boolean
}

const siteOf = (options: PredictCommandOptions): Site => {
  if (options.altitude !== undefined && options.pressure !== undefined)
    throw new BadInput([
      problemOf(
        'site.twice',
        '--altitude, --pressure',
        `${options.altitude}, ${options.pressure}`,
        'one of the two',
        'Give the pressure if you have read it on a barometer, else the altitude.',
      ),
    ])
  if (options.windFrom !== undefined && options.wind === undefined)
    throw new BadInput([
      problemOf(
        'site.no-wind',
        '--wind-from',
        options.windFrom,
        'a bearing beside a wind speed',
        'Say how strong the wind is as well: --wind "2 m/s".',
      ),
    ])
  const altitude = optionQuantity(options.altitude, '--altitude', 'altitude')
  return {
    temperature:
      optionQuantity(options.temperature, '--temperature', 'ambientTemperature') ?? mildDay.temperature,
    pressure:
      optionQuantity(options.pressure, '--pressure', 'airPressure') ??
      (altitude === null ? mildDay.pressure : standardPressure(altitude)),
    wind: {
      speed: optionQuantity(options.wind, '--wind', 'windSpeed') ?? 0,
      from: optionQuantity(options.windFrom, '--wind-from', 'bearing') ?? 0,
    },
  }
}

/** Another fuel lies in the same can, as wet as such fuel usually is. */
const withFuel = (stove: Stove, kind: string | undefined): Stove => {
  if (kind === undefined) return stove
  const other = { ...stove, fuel: { ...stove.fuel, kind, moisture: null } }
  const found = fuelOf(other)
  if (found.ok) return other
  throw new BadInput(found.problems.map((problem) => ({ ...problem, field: '--fuel' })))
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
  const site = siteOf(options)
  const moisture = optionQuantity(options.moisture, '--moisture', 'fuelMoisture')
  const stove = withFuel(stoveFrom(env, file), options.fuel)
  const stops = checkStove(stove, null).filter(({ severity }) => severity === 'stop')
  const outcome = orThrow(predictSteady(stove, { site, ...(moisture === null ? {} : { moisture }) }))
  const code = codeOf(outcome, stops)
  if (options.json) {
    const answer = { stove: stove.name, ...outcome, stopFindings: stops, cautions: MAKING_CAUTIONS }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  const blocks =
    outcome.kind === 'prediction'
      ? predictionBlocks(outcome.prediction, env.width)
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
