import { shown } from '#basis/text/fault.ts'
import { fromSi, unitBySymbol } from '#basis/unitTable.ts'
import { columns, labelled, wrap } from '#compose/page/text.ts'
import { decimals, twice } from '#compose/page/units.ts'
import type { ChannelMapping, Mapping } from '#proof/logger/mapping.ts'
import { momentText, secondsText } from '#proof/logger/moment.ts'
import type { Preview, PreviewRow } from '#proof/logger/preview.ts'
import type { LogFinding } from '#proof/logger/readLog.ts'

/** Names of channels are as long as their makers like. */
const LONGEST_NAME = 18

export const channelName = (name: string): string => {
  const text = shown(name)
  return text.length <= LONGEST_NAME ? text : `${text.slice(0, LONGEST_NAME - 1)}…`
}

/** A reading as a person writes it, both ways: `14.1 °C (57.4 °F)`, `1312 g (46.3 oz)`. */
export const readingText = (quantity: ChannelMapping['quantity'], value: number): string =>
  quantity === 'temperature'
    ? `${decimals(value - 273.15, 1)} °C (${decimals(value * 1.8 - 459.67, 1)} °F)`
    : twice(value, 'mass', 'oz')

/** In the logger's own unit, as its column shows it. */
const own = ({ quantity, unit }: ChannelMapping, value: number | null): string => {
  const row = value === null ? null : unitBySymbol(quantity, unit)
  return value === null || row === null ? '–' : String(Number(fromSi(value, row).toPrecision(7)))
}

/** How many of the columns have room beside each other. */
const fitting = (rows: readonly (readonly string[])[], least: number, width: number): number => {
  const all = Math.max(...rows.map((row) => row.length))
  const wide = (count: number): number =>
    Array.from({ length: count }, (_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)) + 2).reduce(
      (sum, one) => sum + one,
      0,
    )
  let count = all
  while (count > least && wide(count) > width) count--
  return count
}

/** First lines of each part in a table; what has no room is said. */
export const previewBlock = (preview: Preview, mapping: Mapping, width: number): string => {
  const { channels } = mapping
  const row = ({ line, time, values }: PreviewRow): readonly string[] => [
    String(line),
    time === null ? 'not read' : momentText(mapping.time, time),
    ...channels.map((channel, c) => own(channel, values[c] ?? null)),
  ]
  const rows = [
    ['line', 'time', ...channels.map(({ name }) => channelName(name))],
    ['', '', ...channels.map(({ unit }) => unit)],
    ...preview.rows.map(row),
  ]
  const count = fitting(rows, 3, width)
  const hidden = channels.length + 2 - count
  return [
    wrap(
      preview.parts.length > 1
        ? 'First lines of each part, as they were understood'
        : 'First lines, as they were understood',
      width,
    ),
    columns(
      rows.map((one) => one.slice(0, count)),
      Array.from({ length: count }, () => 'right' as const),
      width,
    ),
    ...(hidden > 0
      ? [wrap(`Beside them there is no room for ${hidden} more; they are below.`, width, '  ', '  ')]
      : []),
  ].join('\n')
}

export const channelsBlock = (preview: Preview, mapping: Mapping, width: number): string =>
  [
    wrap('Channels', width),
    labelled(
      preview.channels.map(({ name, readings, low, high, every }, c) => {
        const quantity = mapping.channels[c]?.quantity ?? 'temperature'
        const pace = every === null ? '' : `, one every ${secondsText(every)}`
        const range =
          low === null || high === null
            ? ''
            : `, ${readingText(quantity, low)} to ${readingText(quantity, high)}`
        return [channelName(name), `${readings} ${readings === 1 ? 'reading' : 'readings'}${pace}${range}`]
      }),
      width,
    ),
  ].join('\n')

/** More parts than anybody reads. */
const MOST_SHOWN = 12

/** Where the logger's clock began anew; null where it did not. */
export const partsBlock = ({ parts }: Preview, mapping: Mapping, width: number): string | null => {
  if (parts.length < 2) return null
  const more = parts.length - MOST_SHOWN
  const clock = (at: number): string => momentText(mapping.time, at)
  return [
    wrap('The clock began anew: how these parts follow each other is not in the file', width),
    labelled(
      parts
        .slice(0, MOST_SHOWN)
        .map(({ firstLine, lastLine, lines, from, to }, i) => [
          `part ${i + 1}`,
          `lines ${firstLine} to ${lastLine}, ${lines} read, from ${clock(from)} to ${clock(to)}`,
        ]),
      width,
    ),
    ...(more > 0 ? [wrap(`${more} more; --json lists them.`, width, '  ', '  ')] : []),
  ].join('\n')
}

const MOST_OF_A_KIND = 6

const TITLES: Readonly<Record<LogFinding['kind'], string>> = {
  'other headings': 'Other headings',
  'line not read': 'Lines that were not read',
  'field not read': 'Fields that were not read',
  'line may be cut': 'Cut off',
  gap: 'Gaps',
  'clock went back': 'Resets of the clock',
  'past midnight': 'Midnight',
  'times shared': 'Times',
}

/** What was not read as it stands. Nothing is left out without a word; of many the first. */
export const logFindingsBlock = (findings: readonly LogFinding[], width: number): string => {
  if (findings.length === 0) return wrap('Every line below the headings was read, without a gap.', width)
  const kinds = [...new Set(findings.map(({ kind }) => kind))]
  return kinds
    .map((kind) => {
      const all = findings.filter((one) => one.kind === kind)
      const more = all.length - MOST_OF_A_KIND
      return [
        TITLES[kind],
        ...all.slice(0, MOST_OF_A_KIND).map(({ sentence }) => wrap(sentence, width, '  ', '    ')),
        ...(more > 0 ? [wrap(`${more} more of the kind; --json lists them.`, width, '  ', '    ')] : []),
      ].join('\n')
    })
    .join('\n\n')
}
