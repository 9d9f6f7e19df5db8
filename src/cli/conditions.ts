import type { Command } from 'commander'
import { BadInput } from '#basis/problem.ts'
import { withFuelKind } from '#compose/conditions.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { fuelTable } from '#science/fuel/table.ts'
import { mildDay, type Site } from '#science/site.ts'
import type { Stove } from '#stove/model.ts'
import { optionQuantity, problemOf } from './input.ts'

/** Fuel and weather as asked for on the command line; what is left out is the file's, or a mild day's. */
export interface ConditionOptions {
  readonly fuel?: string
  readonly moisture?: string
  readonly temperature?: string
  readonly altitude?: string
  readonly pressure?: string
  readonly wind?: string
  readonly windFrom?: string
  readonly screen?: boolean
}

/** Gives a command the options for fuel and weather. */
export const withConditions = (command: Command): Command =>
  withSite(
    command.option('--fuel <kind>', `another fuel than the file says: ${[...fuelTable.keys()].join(', ')}`),
  )

/** The same for a command that burns what the file says and nothing else. */
export const withSite = (command: Command): Command =>
  command
    .option('--moisture <share>', 'water in the fuel by weight, e.g. "12 %"')
    .option('--temperature <value>', 'air temperature, e.g. "8 °C"')
    .option('--altitude <height>', 'height above the sea, e.g. "900 m"')
    .option('--pressure <value>', 'air pressure as measured there, e.g. "985 hPa"')
    .option('--wind <speed>', 'wind at the stove’s own height, e.g. "2 m/s"')
    .option(
      '--wind-from <bearing>',
      'where it comes from, from the stove’s front mark clockwise, e.g. "90 deg"',
    )
    .option('--screen', 'a screen as high as the stove stands close by on the wind’s side')

export const siteOf = (options: ConditionOptions): Site => {
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
  if (options.screen === true && options.wind === undefined)
    throw new BadInput([
      problemOf(
        'site.no-wind',
        '--screen',
        'no wind',
        'a wind for the screen to stand in',
        'Say how strong the wind is before the screen: --wind "2 m/s".',
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
      ...(options.screen === true ? { screened: true } : {}),
    },
  }
}

/** Water in the fuel as asked for, wet basis, or null for the file's [1]. */
export const moistureOf = (options: ConditionOptions): number | null =>
  optionQuantity(options.moisture, '--moisture', 'fuelMoisture')

/** The stove with the fuel that was asked for on the command line, or with its own. */
export const withFuel = (stove: Stove, { fuel: kind }: ConditionOptions): Stove => {
  if (kind === undefined) return stove
  const found = withFuelKind(stove, kind)
  if (found.ok) return found.value
  throw new BadInput(found.problems.map((problem) => ({ ...problem, field: '--fuel' })))
}
