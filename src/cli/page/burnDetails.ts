import { long } from '#basis/text/bothUnits.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { columns, labelled, wrap } from '#compose/page/text.ts'
import { percent } from '#compose/page/units.ts'
import { figureText, figureTwice } from '#craft/told/band.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import type { JetFacts, Moment } from '#science/steady/prediction.ts'

const jetText = ({
  part,
  opening,
  count,
  momentumRatio,
  reach,
  bestCount,
  outsideTests,
}: JetFacts): string => {
  const far = reach >= 1 ? 'meet in the middle' : `reach ${percent(reach)} of the way to the middle`
  const outside = outsideTests.length > 0 ? '; outside what these forms were tested with' : ''
  return (
    `${part}, ${opening}: ${count} jets ${far}; their push is ${momentumRatio < 10 ? momentumRatio.toFixed(1) : momentumRatio.toFixed(0)} times the gas’s, ` +
    `and about ${Math.max(1, Math.round(bestCount))} would mix best at this draught${outside}`
  )
}

const chokeText = ({ passages }: Moment): string =>
  [...passages]
    .sort((a, b) => b.lossShare - a.lossShare)
    .filter(({ lossShare }, i) => i < 3 && lossShare >= 0.05)
    .map(({ name, lossShare }) => `${name}, ${percent(lossShare)}`)
    .join('; ')

/** A flame flickers: its height is told to this [m]. */
const NEAR = 0.005

/** Flame, jets, swirl and choke with the front half way down. */
export const flameBlock = ({ halfway }: BurnReport, width: number): string | null => {
  if (halfway === null) return null
  const { flame, temperature } = halfway
  const strikes =
    flame.strikesPot === null ? '' : flame.strikesPot ? '; it strikes the pot' : '; it ends below the pot'
  const rows: (readonly [string, string])[] = [
    [
      'flame',
      `${long(Math.round(flame.height / NEAR) * NEAR)} tall over the fuel can, ` +
        `${figureTwice(temperature.flame, 'flameTemperature', '°F')}${strikes}`,
    ],
    ...flame.jets.map((jet, i): [string, string] => [i === 0 ? 'jets' : '', jetText(jet)]),
    [
      'swirl',
      flame.swirl === null
        ? 'none: no bent vanes'
        : `number ${flame.swirl.toFixed(2)}: the gas whirls${flame.recirculates === true ? ', and flows back down in the middle' : ', but does not flow back in the middle'}`,
    ],
    ['chokes', `${chokeText(halfway)} of the draught’s work`],
  ]
  return ['With the front half way down', labelled(rows, width)].join('\n')
}

/** Sixteen settings are two ways round to the same: from open to shut, each only once. */
const distinct = ({ settings }: NonNullable<BurnReport['turndown']>) =>
  [...settings]
    .sort((a, b) => b.free - a.free)
    .filter((one, i, all) => i === 0 || (all[i - 1]?.free ?? 0) - one.free > 0.004)

/** How firepower follows the damper. */
export const turndownBlock = ({ turndown }: BurnReport, width: number): string | null => {
  if (turndown === null) return null
  const { ratio } = turndown
  const said =
    ratio === null
      ? 'No setting of the damper does better than smoulder.'
      : `Turning down with the damper: highest over lowest firepower that does not smoulder is ${ratio.toFixed(2)}. Front half way down:`
  return [
    wrap(said, width),
    columns(
      [
        ['front mark at', 'intake open', 'firepower', '', ''],
        ...distinct(turndown).map(({ turned, free, firepower, regime }) => [
          formatQuantity(Math.round(turned * 10) / 10, 'bearing'),
          percent(free),
          firepower === null ? '' : figureText(firepower, 'firepower'),
          firepower === null ? '' : figureText(firepower, 'firepower', 'Btu/h'),
          regime ?? 'goes out',
        ]),
      ],
      ['right', 'right', 'right', 'right', 'left'],
    ),
  ].join('\n')
}

const speeds = (value: number): string =>
  `${figureText(value, 'windSpeed')} (${figureText(value, 'windSpeed', 'km/h')}, ${figureText(value, 'windSpeed', 'mph')})`

const windText = ({ wind }: BurnReport): string => {
  if (wind === null) return 'smoulders even in calm air'
  const { stands, worstFrom, tried } = wind
  if (worstFrom === null) return `every one tried, up to ${speeds(tried)} at its own height`
  const side = worstFrom === 0 ? 'the front mark' : `${worstFrom}° clockwise of the front mark`
  return stands <= 0
    ? `hardly any: the lightest air from ${side} makes it smoulder`
    : `up to ${speeds(stands)} at its own height from any side; from ${side} it smoulders first`
}

const energy = (joules: number): string =>
  `${figureText(joules, 'heat')} (${figureText(joules, 'heat', 'kWh')}, ${figureText(joules, 'heat', 'Btu')})`

const warmthText = ({ figures }: BurnReport): string =>
  `${energy(figures.heatOfWalls)} off walls and flame to who sits round it, ` +
  `${energy(figures.heatOfGas)} up with the gas, char included. Outdoors only: no stove for a tent or a room`

/** Grams and ounces, from a kilogram on kilograms and pounds. */
const weight = (kilograms: number): string =>
  kilograms < 1
    ? figureTwice(kilograms, 'mass', 'oz')
    : `${figureText(kilograms, 'mass', 'kg')} (${figureText(kilograms, 'mass', 'lb')})`

const LITRES = 1000

const tripText = ({ trip, fuel }: BurnReport): string | null => {
  if (trip === null) return null
  const { days, boilsADay, litresABoil, fillings, volume } = trip
  const water = figureTwice(litresABoil / LITRES, 'waterVolume', 'US qt')
  const wanted = `${days} ${days === 1 ? 'day' : 'days'}, ${boilsADay} ${boilsADay === 1 ? 'boil' : 'boils'} a day of ${water}`
  if (trip.fuel === null || volume === null || fillings === null)
    return `${wanted}: one filling does not boil so much water`
  return (
    `${wanted}: ${weight(trip.fuel)} of fuel burnt by the time it boils, a tenth to spare; it fills ${figureTwice(volume, 'waterVolume', 'US qt')}. ` +
    `${fillings} ${fillings === 1 ? 'lighting' : 'lightings'}; with a full can each time ${weight(fillings * fuel.charge)}`
  )
}

/** Wind, warmth, trip. */
export const asideBlock = (report: BurnReport, width: number): string => {
  const trip = tripText(report)
  return labelled(
    [
      ['stands wind', windText(report)],
      ['warms', warmthText(report)],
      ...(trip === null ? [] : [['trip', trip] as const]),
    ],
    width,
  )
}
