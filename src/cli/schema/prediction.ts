import * as z from 'zod'
import type { PredictionBandKey } from '#science/answers/predictionBands.ts'
import { bandFields } from './bands.ts'
import { moment } from './moment.ts'
import { cautions, findings, fuel, noBurn, quantity, site, word } from './plain.ts'

const figures: Readonly<Record<PredictionBandKey, readonly [unit: string, what: string]>> = {
  firepower: ['W', 'Mean firepower of the wood-gas phase'],
  firepowerHighest: ['W', 'Highest firepower of the wood-gas phase'],
  firepowerLowest: ['W', 'Lowest firepower of the wood-gas phase'],
  duration: ['s', 'How long the wood-gas phase lasts'],
  charLeft: ['kg', 'Char left on the floor, ash included'],
  fuelRate: ['kg/s', 'Fuel that burns away, as fired, half way down'],
  primaryAirShare: ['1', 'Primary air over all air, half way down'],
  secondaryAirShare: ['1', 'Secondary air over all air, half way down'],
  tertiaryAirShare: ['1', 'Tertiary air over all air, half way down'],
  secondaryToPrimary: ['1', 'Secondary over primary air by mass, half way down'],
  airRatioFlame: ['1', 'Air ratio in the flame, half way down'],
  airRatioOutlet: ['1', 'Air ratio where the gas leaves, half way down'],
  flameTemperature: ['K', 'Flame temperature, half way down'],
}

const prediction = z
  .strictObject({
    stove: word('Name of the stove.'),
    fuel,
    site,
    halfway: moment.describe('With the front half way down, or where it last burns.'),
    stops: z
      .strictObject({
        frontPosition: quantity('1', 'Where it goes out: 0 at the top of the fuel, 1 at its floor'),
        sentence: word('Why.'),
      })
      .nullable()
      .describe('Where a front that does not reach the floor goes out; null for one that does.'),
    woodGas: z
      .strictObject({
        duration: quantity('s', 'Front from the top to the floor'),
        firepower: quantity('W', 'Mean heat release, lower heating value'),
        firepowerHighest: quantity('W', 'Highest'),
        firepowerLowest: quantity('W', 'Lowest'),
        charLeft: quantity('kg', 'Char left on the floor, ash included'),
        charEnergyShare: quantity('1', 'Share of the fuel’s heat that is still in it'),
      })
      .describe('Over the whole wood-gas phase.'),
  })
  .describe('The steady burn, with the median coefficients.')

const head = { format: z.literal('tinwright/prediction@1'), stove: word('Name of the stove.') }
const foot = { stopFindings: findings, cautions }

/** What `tinwright predict --json` prints. */
export const predictionSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      ...head,
      kind: z.literal('prediction'),
      prediction,
      bands: z
        .strictObject(bandFields(figures))
        .nullable()
        .describe('How far the figures may be out; null where none were asked for.'),
      ...foot,
    }),
    z.strictObject({ ...head, kind: z.literal('no burn'), noBurn, ...foot }),
  ])
  .describe(
    'What `tinwright predict --json` prints: the steady burn of a stove while its front travels down. SI units throughout. A prediction, no measurement; no CO or smoke figure is predicted, no tier.',
  )
