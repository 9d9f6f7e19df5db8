import type { LogFinding } from './findings.ts'
import type { Mapping } from './mapping.ts'
import type { Log } from './readLog.ts'
import { usualStep } from './step.ts'
import { fieldsOf, linesOf } from './table.ts'

/** One line of the file, and what was made of it. */
export interface PreviewRow {
  /** Of the file, from 1. */
  readonly line: number
  /** As they stand there. */
  readonly fields: readonly string[]
  /** Between which starts of the clock, from 1; null for a line that was not read. */
  readonly part: number | null
  /** By the logger's clock [s]. */
  readonly time: number | null
  /** Of the mapping's channels [K] or [kg]; null where nothing was read. */
  readonly values: readonly (number | null)[]
  /** What is said of the line. */
  readonly said: readonly string[]
}

export interface PreviewChannel {
  readonly name: string
  readonly readings: number
  /** [K] or [kg]; null where nothing was read. */
  readonly low: number | null
  readonly high: number | null
  /** Usual time from one reading to the next within a part [s]; null for fewer than two. */
  readonly every: number | null
}

export interface PreviewPart {
  /** Lines of the file, from 1. */
  readonly firstLine: number
  readonly lastLine: number
  readonly lines: number
  /** By the logger's clock [s]. */
  readonly from: number
  readonly to: number
}

/** A file as the mapping understands it, to look at before it is kept. */
export interface Preview {
  /** The first lines of every part, those among them that were not read included. */
  readonly rows: readonly PreviewRow[]
  readonly parts: readonly PreviewPart[]
  readonly channels: readonly PreviewChannel[]
}

const lowest = (values: Float64Array): number => values.reduce((a, b) => Math.min(a, b))
const highest = (values: Float64Array): number => values.reduce((a, b) => Math.max(a, b))

const channelsOf = (mapping: Mapping, { parts }: Log): readonly PreviewChannel[] =>
  mapping.channels.map(({ name }, c) => {
    const own = parts.flatMap((part) => part.channels[c] ?? [])
    const filled = own.map(({ value }) => value).filter(({ length }) => length > 0)
    return {
      name,
      readings: filled.reduce((sum, { length }) => sum + length, 0),
      low: filled.length === 0 ? null : Math.min(...filled.map(lowest)),
      high: filled.length === 0 ? null : Math.max(...filled.map(highest)),
      every: usualStep(...own.map(({ time }) => time)) || null,
    }
  })

/** Place of a line in rising lines, or -1. */
const placeOf = (lines: Uint32Array, line: number): number => {
  let [low, high] = [0, lines.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((lines[middle] as number) < line) low = middle + 1
    else high = middle
  }
  return lines[low] === line ? low : -1
}

const saidOf = (findings: readonly LogFinding[], line: number): readonly string[] =>
  findings.filter((one) => one.line === line).map(({ sentence }) => sentence)

/**
 * @param log the text read by that mapping
 * @param most lines shown of each part
 */
export const previewOf = (text: string, mapping: Mapping, log: Log, most = 8): Preview => {
  const lines = linesOf(text)
  const filled = log.parts.filter((part) => part.line.length > 0)
  const rowAt = (line: number): PreviewRow => {
    const p = log.parts.findIndex((part) => placeOf(part.line, line) >= 0)
    const part = log.parts[p]
    return {
      line,
      fields: fieldsOf(lines[line - 1] ?? '', mapping.delimiter),
      part: part === undefined ? null : filled.indexOf(part) + 1,
      time: part?.time[placeOf(part.line, line)] ?? null,
      values: mapping.channels.map((_, c) => {
        const channel = part?.channels[c]
        const at = channel === undefined ? -1 : placeOf(channel.line, line)
        return channel?.value[at] ?? null
      }),
      said: saidOf(log.findings, line),
    }
  }
  const firsts = filled.map((part) => part.line[0] as number)
  const begins = [mapping.skip + 1, ...firsts.slice(1)]
  const ends = [...firsts.slice(1), lines.length + 1]
  const shown = begins.flatMap((from, i) => {
    const below = Array.from({ length: Math.max(0, (ends[i] as number) - from) }, (_, k) => from + k)
    return below.filter((line) => (lines[line - 1] ?? '').trim() !== '').slice(0, most)
  })
  return {
    rows: shown.map(rowAt),
    parts: filled.map((part) => ({
      firstLine: part.line[0] as number,
      lastLine: part.line.at(-1) as number,
      lines: part.line.length,
      from: part.time[0] as number,
      to: part.time.at(-1) as number,
    })),
    channels: channelsOf(mapping, log),
  }
}
