import { toSi, unitBySymbol } from '#basis/unitTable.ts'
import type { ChannelMapping, Mapping } from './mapping.ts'
import { numberReader, saysNothing } from './numbers.ts'
import { fieldsOf, linesOf } from './table.ts'
import { timeReader } from './timeForm.ts'

/** What was not read as it stands, or not quite as it should be. Nothing is left out without one. */
export interface LogFinding {
  readonly kind:
    | 'line not read'
    | 'field not read'
    | 'gap'
    | 'clock went back'
    | 'past midnight'
    | 'times shared'
  /** Of the file, from 1. */
  readonly line: number
  readonly sentence: string
}

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
/** As many findings of a kind as anybody reads; the rest are counted in the last. */
const MOST_FINDINGS = 50

interface Growing {
  readonly time: number[]
  readonly value: number[]
  readonly line: number[]
}

const emptyPart = (channels: readonly ChannelMapping[]): readonly Growing[] =>
  channels.map(() => ({ time: [], value: [], line: [] }))

const siReader = ({ quantity, unit }: ChannelMapping): ((value: number) => number) => {
  const row = unitBySymbol(quantity, unit)
  if (row === null) throw new RangeError(`${unit} is no unit of ${quantity}`)
  return (value) => toSi(value, row)
}

const clockText = (seconds: number): string => `${Number(seconds.toFixed(1))} s`

const median = (values: readonly number[]): number => {
  const sorted = Float64Array.from(values).sort()
  return sorted[Math.floor(sorted.length / 2)] ?? 0
}

/** Findings of one kind beyond what anybody reads become one that counts them. */
const bounded = (findings: readonly LogFinding[]): readonly LogFinding[] => {
  const kinds = [...new Set(findings.map(({ kind }) => kind))]
  return kinds.flatMap((kind) => {
    const all = findings.filter((one) => one.kind === kind)
    const first = all[MOST_FINDINGS]
    return first === undefined
      ? all
      : [
          ...all.slice(0, MOST_FINDINGS),
          {
            kind,
            line: first.line,
            sentence: `${all.length - MOST_FINDINGS} more from line ${first.line} on: ${kind}.`,
          },
        ]
  })
}

/**
 * Reads a logger's file by its mapping. Strict: a line with another number of fields, a field that is no number in
 * the mapping's marks, a time that cannot be read are told, not mended.
 */
export const readLog = (text: string, mapping: Mapping): Log => {
  const number = numberReader(mapping)
  const timeOf = timeReader(mapping.time, number)
  const inSi = mapping.channels.map(siReader)
  const findings: LogFinding[] = []
  const note = (kind: LogFinding['kind'], line: number, sentence: string): void => {
    findings.push({ kind, line, sentence: `Line ${line}: ${sentence}` })
  }
  const ofDay = mapping.time.form === 'hours:minutes:seconds' || mapping.time.form === 'hours:minutes'
  const parts: (readonly Growing[])[] = []
  let part = emptyPart(mapping.channels)
  const steps: number[] = []
  const times: { readonly at: number; readonly line: number }[] = []
  let last: number | null = null
  let days = 0
  let read = 0
  let shared = 0
  for (const [i, written] of linesOf(text).entries()) {
    const line = i + 1
    if (i < mapping.skip || written.trim() === '') continue
    const fields = fieldsOf(written, mapping.delimiter)
    if (fields.length !== mapping.width) {
      note('line not read', line, `${fields.length} fields where ${mapping.width} were expected; not read.`)
      continue
    }
    const seen = timeOf(fields)
    if (seen === null) {
      note('line not read', line, 'its time cannot be read; not read.')
      continue
    }
    let at: number = seen + days * DAY
    if (last !== null && at < last) {
      if (ofDay && last - at > HALF_DAY) {
        days++
        at += DAY
        note('past midnight', line, 'the clock passed midnight; a day was added.')
      } else {
        note(
          'clock went back',
          line,
          `the clock went back from ${clockText(last)} to ${clockText(at)}: what follows is kept apart.`,
        )
        parts.push(part)
        part = emptyPart(mapping.channels)
        last = null
      }
    }
    if (last !== null) {
      if (at === last) shared++
      else steps.push(at - last)
    }
    times.push({ at, line })
    last = at
    read++
    for (const [c, channel] of mapping.channels.entries()) {
      const field = fields[channel.column] ?? ''
      if (field === '') continue
      const value = number(field)
      if (value === null || !Number.isFinite(value)) {
        note(
          'field not read',
          line,
          saysNothing(field)
            ? `${channel.name} says "${field}": no reading.`
            : `"${field}" in ${channel.name} is no number with decimal ${mapping.decimal === ',' ? 'comma' : 'point'}; not read.`,
        )
        continue
      }
      const growing = part[c] as Growing
      growing.time.push(at)
      growing.value.push((inSi[c] as (v: number) => number)(value))
      growing.line.push(line)
    }
  }
  parts.push(part)
  const usual = median(steps)
  for (const [i, { at, line }] of times.entries()) {
    const before = times[i - 1]
    if (before !== undefined && usual > 0 && at - before.at > GAP * usual)
      note('gap', line, `nothing for ${clockText(at - before.at)}, where ${clockText(usual)} is usual.`)
  }
  if (shared > 0)
    note(
      'times shared',
      times[0]?.line ?? 1,
      `${shared} readings share their time with the one before: the clock shows whole steps only.`,
    )
  return {
    parts: parts.map((one) => ({
      channels: mapping.channels.map(({ name, quantity }, c) => {
        const { time, value, line } = one[c] as Growing
        return {
          name,
          quantity,
          time: Float64Array.from(time),
          value: Float64Array.from(value),
          line: Uint32Array.from(line),
        }
      }),
    })),
    findings: bounded(findings),
    read,
  }
}
