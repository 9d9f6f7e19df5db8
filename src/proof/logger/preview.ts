import type { Mapping } from './mapping.ts'
import type { Log } from './readLog.ts'
import { fieldsOf, linesOf } from './table.ts'

/** First lines of a file as the mapping understands them, to look at before it is kept. */
export interface Preview {
  /** As it stands, and what was made of it: time [s] and channels in SI, null where nothing was read. */
  readonly rows: readonly {
    readonly line: number
    readonly fields: readonly string[]
    readonly time: number | null
    readonly values: readonly (number | null)[]
  }[]
  readonly channels: readonly {
    readonly name: string
    readonly readings: number
    readonly low: number | null
    readonly high: number | null
  }[]
}

const range = (values: Float64Array): { readonly low: number | null; readonly high: number | null } => {
  if (values.length === 0) return { low: null, high: null }
  return { low: values.reduce((a, b) => Math.min(a, b)), high: values.reduce((a, b) => Math.max(a, b)) }
}

export const previewOf = (text: string, mapping: Mapping, log: Log, most = 8): Preview => {
  const lines = linesOf(text)
  const channels = log.parts[0]?.channels ?? []
  return {
    rows: lines.slice(mapping.skip, mapping.skip + most).map((written, i) => {
      const line = mapping.skip + i + 1
      const places = channels.map((channel) => channel.line.indexOf(line))
      const seen = places.findIndex((place) => place >= 0)
      return {
        line,
        fields: fieldsOf(written, mapping.delimiter),
        time: seen < 0 ? null : (channels[seen]?.time[places[seen] as number] ?? null),
        values: channels.map((channel, c) => channel.value[places[c] as number] ?? null),
      }
    }),
    channels: mapping.channels.map(({ name }, c) => {
      const all = log.parts.map((part) => part.channels[c]?.value ?? new Float64Array())
      const ranges = all.map(range).filter(({ low }) => low !== null)
      return {
        name,
        readings: all.reduce((sum, { length }) => sum + length, 0),
        low: ranges.length === 0 ? null : Math.min(...ranges.map(({ low }) => low as number)),
        high: ranges.length === 0 ? null : Math.max(...ranges.map(({ high }) => high as number)),
      }
    }),
  }
}
