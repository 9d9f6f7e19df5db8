import { shown } from '#basis/text/fault.ts'
import { toSi, unitBySymbol } from '#basis/unitTable.ts'
import { bounded, type LogFinding } from './findings.ts'
import { headFindings } from './headings.ts'
import type { ChannelMapping, Mapping } from './mapping.ts'
import { momentText, secondsText } from './moment.ts'
import { numberReader, saysNothing } from './numbers.ts'
import { type Row, rowsOf } from './rows.ts'
import { linesOf } from './table.ts'
import { timeReader } from './timeForm.ts'

export type { LogFinding } from './findings.ts'

/** Readings of one column, each at its time: a channel that is read less often has fewer. */
export interface Channel {
  readonly name: string
  readonly quantity: ChannelMapping['quantity']
  /** By the logger's clock [s]. */
  readonly time: Float64Array
  /** [K] or [kg] */
  readonly value: Float64Array
  /** Where each stands in the file, from 1. */
  readonly line: Uint32Array
}

/** Readings between two starts of the logger's clock. */
export interface LogPart {
  readonly channels: readonly Channel[]
  /** Of every line that was read, whether a channel said something in it or not [s]. */
  readonly time: Float64Array
  readonly line: Uint32Array
}

export interface Log {
  /** One, or more where the clock began anew: how they follow each other is not in the file. */
  readonly parts: readonly LogPart[]
  readonly findings: readonly LogFinding[]
  /** Lines of readings that were read. */
  readonly read: number
}

const DAY = 86_400
const HALF_DAY = DAY / 2
/** A pause of more than so many usual steps is a gap; a judgement. */
const GAP = 5

interface Growing {
  readonly time: number[]
  readonly value: number[]
  readonly line: number[]
}

interface GrowingPart {
  readonly time: number[]
  readonly line: number[]
  readonly channels: readonly Growing[]
}

const emptyPart = (channels: readonly ChannelMapping[]): GrowingPart => ({
  time: [],
  line: [],
  channels: channels.map(() => ({ time: [], value: [], line: [] })),
})

const siReader = ({ quantity, unit }: ChannelMapping): ((value: number) => number) => {
  const row = unitBySymbol(quantity, unit)
  if (row === null) throw new RangeError(`${unit} is no unit of ${quantity}`)
  return (value) => toSi(value, row)
}

const median = (values: readonly number[]): number => {
  const sorted = Float64Array.from(values).sort()
  return sorted[Math.floor(sorted.length / 2)] ?? 0
}

type Note = (kind: LogFinding['kind'], line: number, sentence: string) => void

/** Puts the rows in their parts and days. A clock that goes back begins a new part, one that passes midnight a day. */
const inParts = (
  rows: readonly Row[],
  mapping: Mapping,
  note: Note,
  put: (part: GrowingPart, row: Row, at: number) => void,
): readonly GrowingPart[] => {
  const clock = (at: number): string => momentText(mapping.time, at)
  const parts: GrowingPart[] = []
  let part = emptyPart(mapping.channels)
  let last: number | null = null
  let days = 0
  for (const row of rows) {
    let at = row.time + days * DAY
    if (last !== null && at < last) {
      if (mapping.time.form === 'time of day' && last - at > HALF_DAY) {
        days++
        at += DAY
        note('past midnight', row.line, 'the clock passed midnight; a day was added.')
      } else {
        note(
          'clock went back',
          row.line,
          `the clock went back from ${clock(last)} to ${clock(at)}: what follows is kept apart.`,
        )
        parts.push(part)
        part = emptyPart(mapping.channels)
      }
    }
    last = at
    part.time.push(at)
    part.line.push(row.line)
    put(part, row, at)
  }
  return [...parts, part]
}

const noteSteps = (parts: readonly GrowingPart[], note: Note): void => {
  const steps = parts.map(({ time }) => time.slice(1).map((at, i) => at - (time[i] as number)))
  const usual = median(steps.flatMap((some) => some.filter((step) => step > 0)))
  let shared = 0
  let first = 0
  for (const [p, some] of steps.entries())
    for (const [i, step] of some.entries()) {
      const line = parts[p]?.line[i + 1] ?? 0
      if (step === 0) {
        first ||= line
        shared++
      } else if (step > GAP * usual)
        note('gap', line, `nothing for ${secondsText(step)}, where ${secondsText(usual)} is usual.`)
    }
  if (shared > 0)
    note(
      'times shared',
      first,
      shared === 1
        ? 'its time is that of the reading before it.'
        : `this and ${shared - 1} more readings share their time with the one before: the clock shows whole steps only.`,
    )
}

/** A channel that is filled in this share of its lines has lost something where it is empty; one of a slower rate has not. A judgement [1]. */
const MOSTLY_FILLED = 0.4

const noteEmpty = (name: string, empty: readonly number[], read: number, note: Note): void => {
  if (empty.length <= (1 - MOSTLY_FILLED) * read)
    for (const line of empty) note('field not read', line, `${name} is empty: no reading.`)
}

/**
 * Reads a logger's file by its mapping. Strict: a line with another number of fields, a field that is no number in
 * the mapping's marks, a time that cannot be read or stands in no order are told, not mended.
 */
export const readLog = (text: string, mapping: Mapping): Log => {
  const number = numberReader(mapping)
  const inSi = mapping.channels.map(siReader)
  const lines = linesOf(text)
  const findings: LogFinding[] = [...headFindings(lines, mapping)]
  const note: Note = (kind, line, sentence) => {
    findings.push({ kind, line, sentence: `Line ${line}: ${sentence}` })
  }
  const rows = rowsOf(lines, mapping, timeReader(mapping.time, number), note)
  const empty: readonly number[][] = mapping.channels.map(() => [])
  const parts = inParts(rows, mapping, note, (part, { fields, line }, at) => {
    for (const [c, channel] of mapping.channels.entries()) {
      const field = fields[channel.column] ?? ''
      if (field === '') {
        empty[c]?.push(line)
        continue
      }
      const value = number(field)
      if (value === null || !Number.isFinite(value)) {
        note(
          'field not read',
          line,
          saysNothing(field)
            ? `${channel.name} says "${shown(field)}": no reading.`
            : `"${shown(field)}" in ${channel.name} is no number with decimal ${mapping.decimal === ',' ? 'comma' : 'point'}; not read.`,
        )
        continue
      }
      const growing = part.channels[c] as Growing
      growing.time.push(at)
      growing.value.push((inSi[c] as (v: number) => number)(value))
      growing.line.push(line)
    }
  })
  for (const [c, { name }] of mapping.channels.entries())
    noteEmpty(name, empty[c] as number[], rows.length, note)
  noteSteps(parts, note)
  if (!/[\r\n]$/.test(text)) noteCut(rows, mapping, note)
  return {
    parts: parts.map((one) => ({
      channels: mapping.channels.map(({ name, quantity }, c) => {
        const { time, value, line } = one.channels[c] as Growing
        return {
          name,
          quantity,
          time: Float64Array.from(time),
          value: Float64Array.from(value),
          line: Uint32Array.from(line),
        }
      }),
      time: Float64Array.from(one.time),
      line: Uint32Array.from(one.line),
    })),
    findings: bounded(findings),
    read: rows.length,
  }
}

/** The end of a file without a line's end may be the middle of a number: fewer decimals there than anywhere above. */
const noteCut = (rows: readonly Row[], { decimal, width }: Mapping, note: Note): void => {
  const last = rows.at(-1)
  if (last === undefined || rows.length < 3) return
  const decimals = ({ fields }: Row): number => fields[width - 1]?.split(decimal)[1]?.length ?? 0
  const own = decimals(last)
  if (rows.slice(0, -1).every((row) => row.fields[width - 1] !== '' && decimals(row) > own))
    note(
      'line may be cut',
      last.line,
      `the file ends in "${shown(last.fields[width - 1])}" without an end of the line: was the number cut?`,
    )
}
