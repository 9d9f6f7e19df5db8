import { formatQuantity } from '#basis/text/format.ts'
import { columns, labelled, wrap } from '#compose/page/text.ts'
import { decimals } from '#compose/page/units.ts'
import { aligned, BUTTON, rateWithin } from '#proof/logger/align.ts'
import type { BurnRate } from '#proof/logger/burnRate.ts'
import type { ChannelInspection } from '#proof/logger/inspect.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import { momentText } from '#proof/logger/moment.ts'
import { boilingPointAt } from '#science/pot/boilingPoint.ts'
import type { Aligned } from '../logger/match.ts'
import { channelName, readingText } from './loggerReadings.ts'

/** What the readings of one part show of the fire. */
export interface FirePart {
  readonly number: number
  /** Whether there are others. */
  readonly ofSeveral: boolean
  readonly channels: readonly ChannelInspection[]
  /** Of this part's clock with the trial. */
  readonly aligned: Aligned | null
}

const title = (words: string, { number, ofSeveral }: FirePart): string =>
  ofSeveral ? `${words}, part ${number}` : words

/** Parts with fewer readings show nothing of a fire; of more than so many parts the first are shown. */
export const FEWEST_READINGS = 5
export const MOST_PARTS = 4

/** A moment by the logger's clock, and after lighting where that is known. */
const moment = (mapping: Mapping, part: FirePart, at: number): string => {
  const own = momentText(mapping.time, at)
  if (part.aligned === null) return own
  const after = aligned(part.aligned.alignment, at)
  return `${own} (${after < 0 ? `${formatQuantity(-after, 'timeAfterLighting')} before` : `${formatQuantity(after, 'timeAfterLighting')} after`} lighting)`
}

const MOST_OUTLIERS = 8

export const outliersBlock = (part: FirePart, mapping: Mapping, width: number): string | null => {
  const all = part.channels.flatMap(({ outliers, quantity }) => outliers.map((one) => ({ ...one, quantity })))
  const [first] = part.channels
  if (first === undefined) return null
  if (all.length === 0) return wrap(`${title('Outliers', part)}: none.`, width)
  const more = all.length - MOST_OUTLIERS
  return [
    wrap(`${title('Outliers', part)}: far from their neighbours, and left where they are`, width),
    ...all
      .slice(0, MOST_OUTLIERS)
      .map(({ channel, line, time, value, expected, quantity }) =>
        wrap(
          `line ${line}, ${channelName(channel)} at ${moment(mapping, part, time)}: ${readingText(quantity, value)} where the others say ${readingText(quantity, expected)}`,
          width,
          '  ',
          '    ',
        ),
      ),
    ...(more > 0 ? [wrap(`${more} more; --json lists them.`, width, '  ', '    ')] : []),
    wrap(`Against ${first.outlierMethod}.`, width, '  ', '  '),
  ].join('\n')
}

/** Hot enough that it may have boiled in a high place [K]. */
const NEARLY = 363.15

export const boilBlock = (
  part: FirePart,
  mapping: Mapping,
  boilingPoint: string,
  /** Of the channels of the whole file [K]; where the boiling point is only that of sea level, else null. */
  highest: number | null,
  width: number,
): string | null => {
  const temperatures = part.channels.filter(({ quantity }) => quantity === 'temperature')
  if (temperatures.length === 0) return null
  const boiled = temperatures.filter(({ boil }) => boil !== null)
  const method = boiled[0]?.boil?.method
  return [
    wrap(`${title('Boiling', part)}, water boiling at ${boilingPoint}`, width),
    labelled(
      temperatures.map(({ name, boil }) => [
        channelName(name),
        boil === null
          ? 'does not come to stay there'
          : `from ${moment(mapping, part, boil.time)} on, at ${readingText('temperature', boil.temperature)}`,
      ]),
      width,
    ),
    ...(boiled.length === 0 && highest !== null && highest > NEARLY
      ? [
          wrap(
            `Higher up water boils earlier, at ${readingText('temperature', boilingPointAt(500))} 500 m above the sea and at ${readingText('temperature', boilingPointAt(1500))} 1500 m above it: give yours with --boiling-point.`,
            width,
            '  ',
            '  ',
          ),
        ]
      : []),
    ...(method === undefined ? [] : [wrap(`Taken for boiling: ${method}.`, width, '  ', '  ')]),
  ].join('\n')
}

/** At so many moments a rate is told. */
const MOMENTS = 8

const perMinute = (rate: number): string => decimals(rate * 60_000, 2)
const poundsPerHour = (rate: number): string => decimals((rate * 3600) / 0.45359237, 3)

const rateTable = (rate: BurnRate, mapping: Mapping, width: number): string => {
  const { time, rate: rates } = rate
  const count = Math.min(MOMENTS, time.length)
  const places = Array.from({ length: count }, (_, i) =>
    count === 1 ? 0 : Math.round((i * (time.length - 1)) / (count - 1)),
  )
  return columns(
    [
      ['time', 'g/min', 'lb/h'],
      ...places.map((at) => [
        momentText(mapping.time, Math.round(time[at] as number)),
        perMinute(rates[at] as number),
        poundsPerHour(rates[at] as number),
      ]),
    ],
    ['right', 'right', 'right'],
    width,
  )
}

const highestOf = ({ time, rate }: BurnRate): { readonly at: number; readonly rate: number } => {
  const place = rate.reduce((kept, one, i) => (one > (rate[kept] as number) ? i : kept), 0)
  return { at: time[place] as number, rate: rate[place] as number }
}

export const burnRateBlock = (part: FirePart, mapping: Mapping, width: number): string | null => {
  const weighed = part.channels.flatMap(({ name, burnRate }) =>
    burnRate === null || burnRate.time.length === 0 ? [] : [{ name, burnRate }],
  )
  if (weighed.length === 0) return null
  return weighed
    .map(({ name, burnRate }) => {
      const highest = highestOf(burnRate)
      return [
        wrap(`${title(`What stands on ${channelName(name)} gets lighter by`, part)}`, width),
        rateTable(burnRate, mapping, width),
        wrap(
          `Most at ${moment(mapping, part, Math.round(highest.at))}: ${perMinute(highest.rate)} g/min (${poundsPerHour(highest.rate)} lb/h). Below nothing where something was put on. With fuel alone on the scale this is its burning rate; with a pot on it, water that leaves counts too.`,
          width,
          '  ',
          '  ',
        ),
        wrap(`Method: ${burnRate.method}.`, width, '  ', '  '),
      ].join('\n')
    })
    .join('\n\n')
}

const driftText = (matches: Aligned['matches'], rate: number): string => {
  const within = rateWithin(matches)
  if (within === null) return ''
  const drift = (rate - 1) * 3600
  const way = drift > 0 ? 'slow' : 'fast'
  const spare =
    matches.length === 2 ? ' Two moments leave nothing over that would show a wrong one: match a third.' : ''
  return `Its clock runs ${decimals(Math.abs(drift), 0)} s an hour ${way}, ± ${decimals(within * 3600, 0)} s if each moment is good to ${BUTTON} s.${spare}`
}

/** Both clocks, what they were matched by, and how far they drift. */
export const alignmentBlock = (
  trial: string,
  { matches, alignment }: Aligned,
  mapping: Mapping,
  width: number,
): string => {
  const { offset, rate, residuals, cautions } = alignment
  return [
    wrap(`The logger’s clock against the log of “${trial}”`, width),
    columns(
      [
        ['', 'by the logger', 'in the log', 'left over'],
        ...matches.map(({ what, logger, log, found }, i) => [
          found ? `${what}, as the readings show it` : what,
          momentText(mapping.time, logger),
          formatQuantity(log, 'timeAfterLighting'),
          `${decimals(residuals[i] ?? 0, 1)} s`,
        ]),
      ],
      ['left', 'right', 'right', 'right'],
      width,
    ),
    wrap(
      `Lit at ${momentText(mapping.time, Math.round(-offset / rate))} by the logger. ${driftText(matches, rate)}`,
      width,
      '  ',
      '  ',
    ),
    ...cautions.map((caution) => wrap(caution, width, '  ', '    ')),
  ].join('\n')
}
