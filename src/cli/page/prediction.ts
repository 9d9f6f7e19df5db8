import { formatLength, formatQuantity } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import type { Moment, Passage, Prediction, Regime } from '#science/steady/prediction.ts'
import { columns, wrap } from './text.ts'

/** A quantity in its two usual units: `1.22 kW (4160 Btu/h)`. */
const twice = (value: number, key: Parameters<typeof formatQuantity>[1], other: string): string =>
  `${formatQuantity(value, key)} (${formatQuantity(value, key, other)})`

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`

const MEANING: Readonly<Record<Regime, string>> = {
  smoulder:
    'the front gets so little air that it smoulders: smoke and carbon monoxide, and a flame that may not hold. Give the fuel more air: a bigger or freer floor, coarser fuel, less of it, or more draught.',
  clean: 'the gas finds the air it needs and burns. That is no promise of clean air: burn outdoors only.',
  'rich and smoky':
    'the gas leaves with too little air to burn it: a smoky flame, and carbon monoxide. Give it more secondary or tertiary air, or the fuel less.',
  'quenched lean':
    'so much air falls on the gas that it may chill the flame and put it out. Fewer or smaller secondary holes.',
}

const answers = ({ woodGas, halfway, fuel, stops }: Prediction): string => {
  const low = formatQuantity(woodGas.firepowerLowest, 'firepower')
  const high = formatQuantity(woodGas.firepowerHighest, 'firepower')
  return columns(
    [
      [
        'firepower',
        `${twice(woodGas.firepower, 'firepower', 'Btu/h')} on average; ${low} to ${high} as the front sinks`,
      ],
      [
        'burns for',
        `${formatQuantity(woodGas.duration, 'burnTime')}, until the front ${stops === null ? 'reaches the floor' : 'goes out'}; then the char glows`,
      ],
      ['fuel', `${formatQuantity(halfway.fuelRate, 'fuelRate')} of ${twice(fuel.charge, 'mass', 'oz')}`],
      [
        'char left',
        `${twice(woodGas.charLeft, 'mass', 'oz')}, with ${percent(woodGas.charEnergyShare)} of the fuel’s energy still in it`,
      ],
    ],
    ['left', 'left'],
  )
}

const airAnswers = ({ air, airRatio, temperature, superficialVelocity, primaryFlux }: Moment): string => {
  const total = air.primary + air.secondary + air.tertiary
  const part = (flow: number): string => `${formatQuantity(flow, 'massFlow')} (${percent(flow / total)})`
  return columns(
    [
      [
        'primary air',
        part(air.primary),
        `${(superficialVelocity * 1000).toFixed(0)} mm/s up through the bed, ${primaryFlux.toFixed(3)} kg/(m² s)`,
      ],
      [
        'secondary air',
        part(air.secondary),
        `${air.secondaryToPrimary.toFixed(1)} times the primary; enters at ${formatQuantity(temperature.secondaryAir, 'flameTemperature')}`,
      ],
      ['tertiary air', part(air.tertiary), ''],
      [
        'air ratio',
        `λ ${figure(airRatio.flame)} in the flame`,
        `λ ${figure(airRatio.outlet)} where the gas leaves; 1 is just enough for the gas`,
      ],
      [
        'temperature',
        `flame ${twice(temperature.flame, 'flameTemperature', '°F')}`,
        `front ${formatQuantity(temperature.front, 'flameTemperature')}, leaving ${formatQuantity(temperature.outlet, 'flameTemperature')}`,
      ],
    ],
    ['left', 'left', 'left'],
  )
}

const figure = (ratio: number): string => (Number.isFinite(ratio) ? ratio.toFixed(2) : 'no gas')

const opening = (passage: Passage): readonly string[] => [
  passage.name,
  passage.count > 1 ? `${passage.count} ×` : '',
  `${(passage.area * 1e6).toFixed(0)} mm²`,
  `${(passage.area / 0.0254 ** 2).toFixed(2)} in²`,
  `${(passage.massFlow * 1000).toFixed(3)}`,
  passage.velocity.toFixed(2),
  passage.pressureDrop.toFixed(3),
  percent(passage.lossShare),
  formatQuantity(passage.temperature, 'flameTemperature'),
]

const passageTable = (moment: Moment): string => {
  const most = Math.max(...moment.passages.map(({ massFlow }) => Math.abs(massFlow)))
  // Wide passages with neither loss nor say of their own are left out.
  const shown = moment.passages.filter(
    ({ kind, lossShare, massFlow, pressureDrop }) =>
      kind === 'opening' ||
      lossShare >= 0.005 ||
      (Math.abs(massFlow) > 0.03 * most && Math.abs(pressureDrop) > 0.01),
  )
  return [
    columns(
      [['', '', 'open', '', 'g/s', 'm/s', 'Pa', 'loss', 'at'], ...shown.map(opening)],
      ['left', 'right', 'right', 'right', 'right', 'right', 'right', 'right', 'right'],
    ),
    '  Flow runs into the stove and up through it; a minus runs out or down. Loss is the share of the draught’s work.',
  ].join('\n')
}

const choke = (moment: Moment, width: number): string | null => {
  const [worst] = [...moment.passages].sort((a, b) => b.lossShare - a.lossShare)
  if (worst === undefined) return null
  return wrap(
    `What chokes the air: ${worst.name}, which takes ${percent(worst.lossShare)} of the draught’s work.`,
    width,
  )
}

const spaces = (moment: Moment): string =>
  columns(
    moment.spaces.map(({ name, height, pressure, temperature }) => [
      name,
      formatLength(height as Metres, { units: 'both' }),
      `${pressure.toFixed(3)} Pa`,
      formatQuantity(temperature, 'flameTemperature'),
    ]),
    ['left', 'right', 'right', 'right'],
  )

const gasLine = ({ gas }: Moment): string =>
  `Wood gas, dry: CO ${percent(gas.CO)}, H2 ${percent(gas.H2)}, CH4 ${percent(gas.CH4)}, CO2 ${percent(gas.CO2)}, N2 ${percent(gas.N2)}; ${(gas.lowerHeatingValue / 1e6).toFixed(2)} MJ/Nm³ without its tar.`

const windText = ({ speed, from }: Prediction['site']['wind']): string =>
  speed === 0
    ? 'calm'
    : `wind ${twice(speed, 'windSpeed', 'mph')} from ${formatQuantity(from, 'bearing')} of the front mark`

/** The page of a prediction, block by block. */
export const predictionBlocks = (prediction: Prediction, width: number): readonly (string | null)[] => {
  const { fuel, site, halfway } = prediction
  return [
    [
      `${prediction.stove}: ${fuel.label}`,
      `${twice(fuel.charge, 'mass', 'oz')} at ${percent(fuel.moisture)} moisture, ${formatLength(fuel.bedDepth as Metres, { units: 'both' })} deep; ` +
        `air ${twice(site.temperature, 'ambientTemperature', '°F')}, ${formatQuantity(site.pressure, 'airPressure')}, ${windText(site.wind)}`,
    ].join('\n'),
    wrap(`Regime: ${halfway.regime.toUpperCase()}: ${MEANING[halfway.regime]}`, width, '', '  '),
    answers(prediction),
    prediction.stops === null
      ? null
      : wrap(
          `It does not burn to the floor. ${prediction.stops.sentence} Reached: ${percent(prediction.stops.frontPosition)} of the depth.`,
          width,
        ),
    ['With the front half way down', airAnswers(halfway)].join('\n'),
    ['Through every opening', passageTable(halfway)].join('\n'),
    choke(halfway, width),
    ['Spaces, pressure over the outside air at the same height', spaces(halfway)].join('\n'),
    wrap(gasLine(halfway), width),
    wrap(
      `Balances close: mass to ${halfway.balance.mass.toExponential(0)}, energy to ${Math.abs(halfway.balance.energy).toExponential(0)} of what goes in.`,
      width,
    ),
    wrap(
      'These are the model’s median figures, without bands: a burr, a draught or a handful of fines moves them. No carbon monoxide and no smoke figure is predicted; the regime names a risk, not an emission.',
      width,
    ),
  ]
}
