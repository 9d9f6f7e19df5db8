import { long } from '#basis/text/bothUnits.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { columns, wrap } from '#compose/page/text.ts'
import { celsius, decimals, fahrenheit, percent, whole } from '#compose/page/units.ts'
import type { Moment, Passage, Prediction } from '#science/steady/prediction.ts'

const row = (passage: Passage): readonly string[] => [
  passage.name,
  passage.count > 1 ? String(passage.count) : '',
  whole(passage.area * 1e6),
  (passage.area / 0.0254 ** 2).toFixed(2),
  decimals(passage.massFlow * 1000, 3),
  decimals(passage.velocity, 2),
  decimals(passage.pressureDrop, 3),
  percent(passage.lossShare),
  celsius(passage.temperature),
]

const HEAD = ['', 'holes', 'mm²', 'in²', 'g/s', 'm/s', 'Pa', 'loss', '°C'] as const
const LEGEND =
  'Free area; air or gas that passes; its speed; the pressure that drives it, its own lightness counted in; the share of the draught’s work it takes; how hot it is. A minus runs out of the stove, or down.'

const most = ({ passages }: Moment): number => Math.max(...passages.map(({ massFlow }) => Math.abs(massFlow)))

/** From the ground up; wide passages with neither loss nor say of their own are left out. */
const shown = (moment: Moment): readonly Passage[] =>
  moment.passages
    .filter(
      ({ kind, lossShare, massFlow, pressureDrop }) =>
        kind === 'opening' ||
        lossShare >= 0.005 ||
        (Math.abs(massFlow) > 0.03 * most(moment) && Math.abs(pressureDrop) > 0.01),
    )
    .sort((one, other) => one.height - other.height)

/** Holes of a row that blow the other way, for wind goes in on one side and out on the other. */
const acrossBlock = (moment: Moment, width: number): string | null => {
  const across = moment.passages.filter(({ backFlow }) => Math.abs(backFlow) > 0.01 * most(moment))
  if (across.length === 0) return null
  const said = across.map(
    ({ name, backFlow }) => `${name} (${formatQuantity(Math.abs(backFlow), 'massFlow')} against the rest)`,
  )
  return wrap(`Wind blows in on one side and out on the other: ${said.join(', ')}.`, width)
}

const holdsBack = (moment: Moment, windy: boolean, width: number): string | null => {
  const [first, second] = [...moment.passages].sort((one, other) => other.lossShare - one.lossShare)
  if (first === undefined) return null
  const next = second === undefined ? '' : `, then ${second.name}, ${percent(second.lossShare)}`
  const straight = windy ? '; wind that blows straight through a row is not counted' : ''
  return wrap(
    `Where the air and gas are choked most: ${first.name}, which takes ${percent(first.lossShare)} of the draught’s work${next}${straight}.`,
    width,
  )
}

const spacesTable = (moment: Moment, width: number): string =>
  columns(
    [
      ['', 'above the ground', 'Pa', '°C', '°F'],
      ...[...moment.spaces]
        .sort((one, other) => one.height - other.height)
        .map(({ name, height, pressure, temperature }) => [
          name,
          long(height),
          decimals(pressure, 3),
          celsius(temperature),
          fahrenheit(temperature),
        ]),
    ],
    ['left', 'right', 'right', 'right', 'right'],
    width,
  )

/** Through what the air and gas go, what holds them back, and the spaces between. */
export const passageBlocks = ({ halfway, site }: Prediction, width: number): readonly (string | null)[] => [
  [
    'Through every opening and narrow place',
    columns(
      [HEAD, ...shown(halfway).map(row)],
      ['left', 'right', 'right', 'right', 'right', 'right', 'right', 'right', 'right'],
      width,
    ),
    wrap(LEGEND, width, '  ', '  '),
  ].join('\n'),
  acrossBlock(halfway, width),
  holdsBack(halfway, site.wind.speed > 0, width),
  [
    wrap('Spaces: pressure above that of the open air at the same height, and how hot', width),
    spacesTable(halfway, width),
  ].join('\n'),
]
