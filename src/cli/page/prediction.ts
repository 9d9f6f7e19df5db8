import { long } from '#basis/text/bothUnits.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { labelled, wrap } from '#compose/page/text.ts'
import { degrees, percent, twice } from '#compose/page/units.ts'
import type { PredictionBands } from '#science/answers/predictionBands.ts'
import { LEAN_LIMIT, RICH_LIMIT, SMOULDER_FLUX } from '#science/steady/describe.ts'
import type { Moment, Prediction } from '#science/steady/prediction.ts'
import { passageBlocks } from './passages.ts'
import { predictionBandBlocks } from './predictionBands.ts'
import { regimeBlock } from './regime.ts'

export const windText = ({ speed, from, screened }: Prediction['site']['wind']): string =>
  speed === 0
    ? 'calm'
    : `wind ${twice(speed, 'windSpeed', 'mph')} from ${formatQuantity(from, 'bearing')} of the front mark${screened === true ? ', behind a screen' : ''}`

const headBlock = ({ stove, fuel, site }: Prediction, width: number): string =>
  [
    wrap(`${stove}: ${fuel.label}`, width),
    labelled(
      [
        [
          'fuel',
          `${twice(fuel.charge, 'mass', 'oz')} at ${percent(fuel.moisture)} moisture, ${long(fuel.bedDepth)} deep`,
        ],
        [
          'weather',
          `${degrees(site.temperature)}, ${twice(site.pressure, 'airPressure', 'inHg')}, ${windText(site.wind)}`,
        ],
      ],
      width,
    ),
  ].join('\n')

const answers = ({ woodGas, halfway, stops }: Prediction, width: number): string => {
  const low = formatQuantity(woodGas.firepowerLowest, 'firepower')
  const high = formatQuantity(woodGas.firepowerHighest, 'firepower')
  const steady = low === high ? 'steady' : `from ${low} to ${high}`
  return labelled(
    [
      [
        'firepower',
        `${twice(woodGas.firepower, 'firepower', 'Btu/h')} on average, ${steady} as the front sinks`,
      ],
      [
        'burns for',
        `${formatQuantity(woodGas.duration, 'burnTime')}, until the front ${stops === null ? 'reaches the floor' : 'goes out'}; then the char glows`,
      ],
      ['fuel rate', twice(halfway.fuelRate, 'fuelRate', 'lb/h')],
      [
        'char left',
        `${twice(woodGas.charLeft, 'mass', 'oz')}, with ${percent(woodGas.charEnergyShare)} of the fuel’s energy still in it`,
      ],
    ],
    width,
  )
}

/** Primary air so slow that the front smoulders, at the density of this air [m/s]. */
const smoulderVelocity = ({ superficialVelocity, primaryFlux }: Moment): number =>
  (SMOULDER_FLUX / primaryFlux) * superficialVelocity

const ratio = (value: number): string => (Number.isFinite(value) ? value.toFixed(2) : 'no gas')

const airRows = (moment: Moment): readonly (readonly [string, string])[] => {
  const { air, airRatio, temperature, superficialVelocity } = moment
  const total = air.primary + air.secondary + air.tertiary
  const part = (flow: number): string =>
    `${twice(flow, 'massFlow', 'lb/h')}, ${percent(flow / total)} of all air`
  const slowest = (smoulderVelocity(moment) * 1000).toFixed(1)
  return [
    [
      'primary air',
      `${part(air.primary)}: ${(superficialVelocity * 1000).toFixed(1)} mm (${(superficialVelocity / 0.0254).toFixed(2)} in) a second up through the bed, which smoulders below about ${slowest}`,
    ],
    [
      'secondary air',
      air.secondary > 0
        ? `${part(air.secondary)}: ${air.secondaryToPrimary.toFixed(1)} times the primary; it comes in at ${degrees(temperature.secondaryAir)}`
        : 'none',
    ],
    ['tertiary air', air.tertiary > 0 ? part(air.tertiary) : 'none'],
    [
      'air ratio',
      `${ratio(airRatio.flame)} in the flame, ${ratio(airRatio.outlet)} where the gas leaves; 1 is just enough air to burn the gas, it smokes below ${RICH_LIMIT} where it leaves and is chilled above ${LEAN_LIMIT} in the flame`,
    ],
  ]
}

const heatRows = ({ temperature, flame, outerWalls }: Moment): readonly (readonly [string, string])[] => {
  const [hottest] = outerWalls
  const strikes = flame.strikesPot === true ? '; it strikes the pot' : ''
  return [
    [
      'hot',
      `front ${degrees(temperature.front)}, flame ${degrees(temperature.flame)}, leaving gas ${degrees(temperature.outlet)}`,
    ],
    ['flame', `ends ${long(flame.height)} above the top of the fuel can${strikes}`],
    ...(hottest === undefined
      ? []
      : [
          [
            'outside',
            `${hottest.part} is hottest, ${degrees(hottest.temperature)}, ${long(hottest.height)} above the ground`,
          ] as const,
        ]),
  ]
}

/** Exactly [m³]. */
const CUBIC_FOOT = 0.3048 ** 3

const gasText = ({ gas }: Moment): string =>
  `Wood gas before it burns, dry, by volume: carbon monoxide ${percent(gas.CO)}, hydrogen ${percent(gas.H2)}, methane ${percent(gas.CH4)}, ` +
  `carbon dioxide ${percent(gas.CO2)}, nitrogen ${percent(gas.N2)}. At 0 °C (32 °F) one m³ of it gives ${formatQuantity(gas.lowerHeatingValue, 'heat')} ` +
  `(one ft³ ${formatQuantity(gas.lowerHeatingValue * CUBIC_FOOT, 'heat', 'Btu')}), its tar not counted.`

const balanceText = ({ balance }: Moment): string =>
  `The sums close: mass within ${balance.mass.toExponential(0)} of the largest flow, energy within ${Math.abs(balance.energy).toExponential(0)} of the fuel’s heat.`

const UNSURE =
  'These are the model’s median figures, without bands: a burr, a draught or a handful of fines moves them.'
const BANDED =
  'Bands hold what the model’s coefficients are not sure of, not a burr, a gust or a handful of fines.'
const NOT_PREDICTED = 'No CO or smoke figure is predicted, no tier: the regime names a risk.'

const stopText = ({ stops }: Prediction): string | null =>
  stops === null
    ? null
    : `It does not burn to the floor. ${stops.sentence} Reached: ${percent(stops.frontPosition)} of the depth.`

/** The page of a prediction, block by block. */
export const predictionBlocks = (
  prediction: Prediction,
  bands: PredictionBands | null,
  width: number,
): readonly (string | null)[] => {
  const { halfway } = prediction
  const out = stopText(prediction)
  const when = `With the front ${halfway.frontPosition === 0.5 ? 'half way' : `${percent(halfway.frontPosition)} of the way`} down`
  return [
    headBlock(prediction, width),
    regimeBlock(prediction, width),
    answers(prediction, width),
    out === null ? null : wrap(out, width),
    [when, labelled([...airRows(halfway), ...heatRows(halfway)], width)].join('\n'),
    ...(bands === null ? [] : predictionBandBlocks(prediction, bands, width)),
    ...passageBlocks(prediction, width),
    wrap(gasText(halfway), width),
    wrap(balanceText(halfway), width),
    wrap(`${bands === null ? UNSURE : BANDED} ${NOT_PREDICTED}`, width),
  ]
}
