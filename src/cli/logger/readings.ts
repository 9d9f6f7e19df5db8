import { type Alignment, aligned } from '#proof/logger/align.ts'
import type { ChannelInspection } from '#proof/logger/inspect.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import type { Log, LogPart } from '#proof/logger/readLog.ts'

const cell = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

/** Twelve figures: more than any logger has, and none of the dust of the conversion to SI. */
const figure = (value: number): string => String(Number(value.toPrecision(12)))

const inOurs = (quantity: 'temperature' | 'mass', value: number): number =>
  quantity === 'temperature' ? value - 273.15 : value * 1000

/** The readings as they were understood, in one shape whatever the logger: CSV with points, °C and g. Outliers stay, and are named. */
export const readingsCsv = (
  mapping: Mapping,
  log: Log,
  inspected: readonly (readonly ChannelInspection[])[],
  alignedPart: { readonly part: LogPart; readonly alignment: Alignment } | null,
): string => {
  const units = mapping.channels.map(({ quantity }) => (quantity === 'temperature' ? '°C' : 'g'))
  const head = [
    'part',
    'line',
    'time s',
    ...(alignedPart === null ? [] : ['after lighting s']),
    ...mapping.channels.map(({ name }, c) => `${name} in ${units[c]}`),
    'outliers',
  ]
  const lines = [head.map(cell).join(',')]
  for (const [p, part] of log.parts.entries()) {
    const next = part.channels.map(() => 0)
    const far = new Map<number, string[]>()
    for (const { outliers } of inspected[p] ?? [])
      for (const { line, channel } of outliers) far.set(line, [...(far.get(line) ?? []), channel])
    for (const [i, line] of part.line.entries()) {
      const at = part.time[i] as number
      const values = part.channels.map(({ quantity, line: own, value }, c) => {
        const k = next[c] as number
        if (own[k] !== line) return ''
        next[c] = k + 1
        return figure(inOurs(quantity, value[k] as number))
      })
      const after =
        alignedPart === null
          ? []
          : [part === alignedPart.part ? figure(aligned(alignedPart.alignment, at)) : '']
      lines.push(
        [String(p + 1), String(line), figure(at), ...after, ...values, (far.get(line) ?? []).join('; ')]
          .map(cell)
          .join(','),
      )
    }
  }
  return `${lines.join('\n')}\n`
}
