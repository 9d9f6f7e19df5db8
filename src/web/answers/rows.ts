import { formatQuantity } from '#basis/text/format.ts'
import { bandText, figureText } from '#craft/told/band.ts'
import type { BurnBandKey } from '#science/answers/burn/bands.ts'
import type { LiveBurn } from '#science/answers/live/liveBurn.ts'
import type { Band } from '#science/bands/bands.ts'
import type { Moment } from '#science/steady/prediction.ts'
import { figureIn, figureParts, lengthIn, unitsOf } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'
import type { Bands, Before } from '../stove/liveBurn.ts'

/** One answer beside the picture. */
export interface AnswerRow {
  readonly key: string
  readonly caption: string
  readonly value: string
  /** The other unit, or what else belongs to the figure. */
  readonly beside: string | null
  /** Between the 5th and 95th percentile, with what it is a share of; null where there is none, or not yet. */
  readonly band: AnswerBand | null
  /** Against what it is set beside; null where there is none. */
  readonly change: AnswerChange | null
}

/** A difference in two halves: `0.4 kW more` is seen in every row, `than Heron` is said once for all of them. */
export interface AnswerChange {
  readonly told: string
  readonly than: string
}

export interface AnswerBand {
  readonly low: number
  readonly high: number
  readonly value: number
  readonly text: string
}

const timeText = (seconds: number): string =>
  seconds >= 600
    ? formatQuantity(Math.round(seconds / 60) * 60, 'burnTime')
    : figureText(seconds, 'burnTime', 'min')

/** A difference no finer than the figures it lies between are shown. [W] */
const TEN_WATTS = 10

/** The same, of times: to a tenth of a minute. */
const timeApart = (seconds: number): string => timeText(Math.round(seconds / 6) * 6)

/** Differences smaller than this share of the figure are none [1]. */
const SAME = 0.01

/** A difference in words; `words` are for more and for less. */
const changed = (
  now: number | null,
  then: number | null | undefined,
  name: string | undefined,
  text: (difference: number) => string,
  words: readonly [more: string, less: string],
): AnswerChange | null => {
  if (name === undefined || now === null || then === null || then === undefined) return null
  const difference = now - then
  const told = text(Math.abs(difference))
  const none = Math.abs(difference) < SAME * Math.max(Math.abs(now), Math.abs(then)) || !/[1-9]/.test(told)
  return none
    ? { told: 'the same', than: `as ${name}` }
    : { told: `${told} ${difference > 0 ? words[0] : words[1]}`, than: `than ${name}` }
}

const MORE = ['more', 'less'] as const
const LONGER = ['longer', 'shorter'] as const

/** The main unit alone: a line of differences has no room for both. */
const single = (units: Units): Units => (units === 'both' ? 'mm' : units)

/** Answers of a burn in the order in which a maker asks. */
export const answerRows = (
  burn: LiveBurn,
  moment: Moment | null,
  before: Before | null,
  drawn: Bands | null,
  units: Units,
): readonly AnswerRow[] => {
  const bands = drawn?.answer ?? null
  const band = (key: BurnBandKey, value: number | null, text: (band: Band) => string): AnswerBand | null => {
    const found = bands?.figures[key] ?? null
    return found === null || value === null
      ? null
      : { low: found.low, high: found.high, value, text: text(found) }
  }
  const metric = single(units)
  const inUnit = (key: 'firepower' | 'wallTemperature' | 'mass') => (found: Band) =>
    bandText(found, key, unitsOf(key)[metric === 'in' ? 1 : 0])
  const { figures, boil, fuel, touch } = burn
  const then = before?.burn
  const name = before?.name
  const [power, powerBeside] = figureParts(figures.firepower, 'firepower', units)
  const uneven = figures.firepowerHigh - figures.firepowerLow > 0.08 * figures.firepower
  const powers = [figures.firepowerLow, figures.firepowerHigh].map((one) =>
    figureIn(one, 'firepower', metric).replace(/ .*$/, ''),
  )
  const rows: AnswerRow[] = [
    {
      key: 'firepower',
      caption: 'firepower',
      value: power,
      beside: [powerBeside, uneven ? `${powers.join(' to ')} on the way` : null]
        .filter((text) => text !== null)
        .join(' · '),
      band: band('firepower', figures.firepower, inUnit('firepower')),
      change: changed(
        figures.firepower,
        then?.figures.firepower,
        name,
        (difference) => figureIn(Math.round(difference / TEN_WATTS) * TEN_WATTS, 'firepower', metric),
        MORE,
      ),
    },
    {
      key: 'time',
      caption: 'wood gas for',
      value: timeText(figures.woodGasTime),
      beside: figures.charTime > 0 ? `then char glows ${timeText(figures.charTime)}` : null,
      band: band('frontAtFloorAt', figures.woodGasTime, (found) => bandText(found, 'burnTime')),
      change: changed(figures.woodGasTime, then?.figures.woodGasTime, name, timeApart, LONGER),
    },
    {
      key: 'boil',
      caption: 'boils 1 L in',
      value: boil.time === null ? 'does not boil' : timeText(boil.time),
      beside:
        boil.time === null
          ? `${figureIn(boil.warmest, 'waterTemperature', units)} at most`
          : `from ${figureIn(boil.waterStart, 'waterTemperature', units)}`,
      band: band('timeToBoil 1 L', boil.time, (found) => bandText(found, 'burnTime')),
      change: changed(boil.time, then?.boil.time, name, timeApart, ['later', 'sooner']),
    },
  ]
  if (moment !== null) {
    const ratio = moment.air.secondaryToPrimary
    rows.push(
      {
        key: 'ratio',
        caption: 'secondary to primary air',
        value: Number.isFinite(ratio) ? `${ratio.toFixed(1)} : 1` : 'no primary air',
        beside: null,
        band: null,
        change: changed(
          ratio,
          before?.moment?.air.secondaryToPrimary,
          name,
          (difference) => difference.toFixed(1),
          MORE,
        ),
      },
      {
        key: 'flame',
        caption: 'flame',
        value: `${lengthIn(Math.round(moment.flame.height * 1000) / 1000, metric)} high`,
        beside: `${figureIn(moment.temperature.flame, 'flameTemperature', units)}${moment.flame.strikesPot === true ? ', strikes the pot' : ''}`,
        band: null,
        change: changed(
          moment.flame.height,
          before?.moment?.flame.height,
          name,
          (difference) => lengthIn(Math.round(difference * 1000) / 1000, metric),
          ['higher', 'lower'],
        ),
      },
    )
  }
  rows.push(
    {
      key: 'wall',
      caption: 'hottest outer wall',
      value: figureParts(figures.hottestOuterWall, 'wallTemperature', units)[0],
      beside: [
        figureParts(figures.hottestOuterWall, 'wallTemperature', units)[1],
        touch.risk === 'burns after a while' && touch.longest !== null
          ? `burns skin after ${figureText(touch.longest, 'burnTime', 's')}`
          : touch.risk,
      ]
        .filter((text) => text !== null)
        .join(' · '),
      band: band('hottestOuterWall', figures.hottestOuterWall, inUnit('wallTemperature')),
      change: null,
    },
    {
      key: 'charge',
      caption: 'fuel in the can',
      value: figureParts(fuel.charge, 'mass', units)[0],
      beside: [
        figureParts(fuel.charge, 'mass', units)[1],
        `${fuel.label.split(',')[0]}, ${formatQuantity(fuel.moisture, 'fuelMoisture')} water`,
      ]
        .filter((text) => text !== null)
        .join(' · '),
      band: null,
      change: changed(
        fuel.charge,
        then?.fuel.charge,
        name,
        (difference) => figureIn(difference, 'mass', metric),
        MORE,
      ),
    },
  )
  return rows
}

/** Where the air goes, as shares of all that comes in, largest names first in the order of the gas [1]. */
export const airShares = ({
  air: { primary, secondary, tertiary },
}: Moment): readonly { readonly name: string; readonly share: number }[] => {
  const all = primary + secondary + tertiary
  return [
    { name: 'primary', share: primary / all },
    { name: 'secondary', share: secondary / all },
    { name: 'tertiary', share: tertiary / all },
  ].filter(({ share }) => share > 0.001)
}

/** One sentence of the answers, for whoever hears the page. */
export const spokenAnswer = (burn: LiveBurn, course: string): string =>
  `${course}. ${figureText(burn.figures.firepower, 'firepower')} for ${timeText(burn.figures.woodGasTime)}; ${
    burn.boil.time === null ? 'one litre does not boil' : `one litre boils in ${timeText(burn.boil.time)}`
  }.`
