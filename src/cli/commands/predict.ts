import { BadInput, orThrow } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { mildDay, type Site } from '#science/site.ts'
import { predictSteady } from '#science/steady/predict.ts'
import type { Stove } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { optionQuantity, problemOf, stoveFrom } from '../input.ts'
import { cautionBlock } from '../page/cautions.ts'
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

const withFuel = (stove: Stove, kind: string | undefined): Stove =>
  kind === undefined ? stove : { ...stove, fuel: { ...stove.fuel, kind, moisture: null } }

export const predict = (env: Environment, file: string, options: PredictCommandOptions): ExitCode => {
  const site = siteOf(options)
  const moisture = optionQuantity(options.moisture, '--moisture', 'fuelMoisture')
  const stove = withFuel(stoveFrom(env, file), options.fuel)
  const outcome = orThrow(predictSteady(stove, { site, ...(moisture === null ? {} : { moisture }) }))
  const code = outcome.kind === 'prediction' ? EXIT.fine : EXIT.findings
  if (options.json) {
    env.out(`${JSON.stringify({ stove: stove.name, ...outcome, cautions: MAKING_CAUTIONS }, null, 2)}\n`)
    return code
  }
  env.out(
    outcome.kind === 'prediction'
      ? page(...predictionBlocks(outcome.prediction, env.width), cautionBlock(env.width))
      : page(
          wrap(`${stove.name} does not burn as drawn: ${outcome.noBurn.sentence}`, env.width),
          cautionBlock(env.width),
        ),
  )
  return code
}
