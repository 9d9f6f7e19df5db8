import type { Delimiter } from './mapping.ts'
import { numberish, timeish } from './numbers.ts'
import { fieldsOf } from './table.ts'

/** How a file is laid out, before anyone asks what its columns mean. */
export interface Shape {
  readonly delimiter: Delimiter
  /** Lines above the first line of readings. */
  readonly skip: number
  /** Fields of a line. */
  readonly width: number
  readonly headers: readonly string[]
  /** A line of nothing but units under the headers; empty texts where there is none. */
  readonly units: readonly string[]
}

/** In order of trust: who separates with a semicolon means it. */
const DELIMITERS: readonly Delimiter[] = ['\t', ';', '|', ',', 'blanks']
/** Enough of a file to know its shape by. */
const LOOKED_AT = 400

const isReading = (fields: readonly string[]): boolean => {
  const told = fields.filter((field) => field !== '')
  return told.length >= 2 && told.every((field) => numberish(field) || timeish(field))
}

/** Mostly readings: a status word in a column does not unmake the line. */
const looksLikeReadings = (fields: readonly string[]): boolean => {
  const told = fields.filter((field) => field !== '')
  const readings = told.filter((field) => numberish(field) || timeish(field)).length
  return told.length >= 2 && readings >= 2 && readings >= 0.6 * told.length
}

const commonest = (counts: readonly number[]): number => {
  const times = new Map<number, number>()
  for (const count of counts) times.set(count, (times.get(count) ?? 0) + 1)
  return [...times].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 0
}

interface Fit {
  readonly delimiter: Delimiter
  readonly width: number
  /** Lines that are readings of that width, as a share of what was looked at [1]. */
  readonly share: number
}

const fitOf = (lines: readonly string[], delimiter: Delimiter): Fit => {
  const split = lines.map((line) => fieldsOf(line, delimiter))
  const readings = split.filter((fields) => fields.length > 1 && looksLikeReadings(fields))
  const width = commonest(readings.map((fields) => fields.length))
  const clean = readings.filter((fields) => fields.length === width)
  return { delimiter, width, share: clean.length / Math.max(lines.length, 1) }
}

/** The delimiter that makes the most of the lines, or null where none makes a table. */
export const shapeOf = (lines: readonly string[]): Shape | null => {
  const told = /^sep=(.)$/.exec(lines[0] ?? '')?.[1]
  const filled = lines.filter((line) => line.trim() !== '').slice(0, LOOKED_AT)
  const fits = DELIMITERS.filter((one) => told === undefined || one === told).map((one) => fitOf(filled, one))
  const best = fits.reduce<Fit | null>(
    (kept, fit) => (fit.share > 0 && (kept === null || fit.share > kept.share + 0.02) ? fit : kept),
    null,
  )
  if (best === null) return null
  const { delimiter, width } = best
  const fieldsAt = (i: number): readonly string[] => fieldsOf(lines[i] ?? '', delimiter)
  const first = lines.findIndex((_, i) => {
    const fields = fieldsAt(i)
    return fields.length === width && (isReading(fields) || (i > 0 && looksLikeReadings(fields)))
  })
  if (first < 0) return null
  const above = Array.from({ length: Math.min(first, 2) }, (_, i) =>
    // A header may stand in a comment.
    fieldsOf((lines[first - 1 - i] ?? '').replace(/^#+\s*/, ''), delimiter),
  ).filter((fields) => fields.length === width)
  const [nearest = [], next = []] = above
  const onlyUnits = nearest.length > 0 && next.length > 0 && nearest.every(isUnitField)
  const pad = (fields: readonly string[]): readonly string[] =>
    Array.from({ length: width }, (_, i) => fields[i] ?? '')
  return {
    delimiter,
    width,
    skip: first,
    headers: pad(onlyUnits ? next : nearest),
    units: pad(onlyUnits ? nearest : []),
  }
}

const isUnitField = (field: string): boolean =>
  field === '' || /^[([]?(?:°|º|deg ?)?[A-Za-z]{1,4}[)\]]?$|^hh?:mm(?::ss)?$|^[Yy]{2,4}.*$/.test(field)
