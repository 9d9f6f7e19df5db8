import type { Delimiter } from './mapping.ts'
import { numberish, timeish } from './numbers.ts'
import { fieldsOf } from './table.ts'
import { roleOf, unitNamedSo } from './words.ts'

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
const DELIMITERS: readonly Delimiter[] = ['tab', ';', '|', ',', 'blanks']
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
  /** Lines that are readings of that width, and of another. */
  readonly clean: number
  readonly other: number
}

/** A comma beside a word is no blank's neighbour: such a line is one of fields apart by commas. */
const isApart = (fields: readonly string[]): boolean =>
  fields.every((field) => numberish(field) || timeish(field) || !/[;,|]/.test(field))

const fitOf = (lines: readonly string[], delimiter: Delimiter): Fit => {
  const split = lines.map((line) => fieldsOf(line, delimiter))
  const readings = split.filter(
    (fields) => fields.length > 1 && looksLikeReadings(fields) && (delimiter !== 'blanks' || isApart(fields)),
  )
  const width = commonest(readings.map((fields) => fields.length))
  const clean = readings.filter((fields) => fields.length === width).length
  return { delimiter, width, clean, other: readings.length - clean }
}

/** Fewer lines tell nothing that one damaged among them could not have told. */
const FEWEST = 3

/** The delimiter that makes a table of the lines, or null where none does. */
export const shapeOf = (lines: readonly string[]): Shape | null => {
  const said = /^sep=(.)$/.exec(lines[0] ?? '')?.[1]
  const told = said === '\t' ? 'tab' : said
  const filled = lines.filter((line) => line.trim() !== '').slice(0, LOOKED_AT)
  const fits = DELIMITERS.filter((one) => told === undefined || one === told).map((one) => fitOf(filled, one))
  const most = Math.max(...fits.map(({ clean }) => clean))
  // One that is trusted more, and makes a table of most lines, is not given up for a few damaged ones.
  const best = fits.find(({ clean }) => clean >= most / 2)
  if (best === undefined || best.clean < FEWEST) return null
  const { delimiter, width } = best
  const fieldsAt = (i: number): readonly string[] => fieldsOf(lines[i] ?? '', delimiter)
  const first = lines.findIndex((_, i) => {
    const fields = fieldsAt(i)
    return fields.length === width && (isReading(fields) || (i > 0 && looksLikeReadings(fields)))
  })
  if (first < 0) return null
  const { headers, units } = headingsAbove(lines.slice(0, first), delimiter, width)
  // Where no headings say how many columns there are, the lines must be of one mind.
  if (headers.every((header) => header === '') && best.clean - best.other < FEWEST) return null
  return { delimiter, width, skip: first, headers, units }
}

interface Headings {
  readonly headers: readonly string[]
  readonly units: readonly string[]
}

/** So many lines above the readings are looked at for headings: a few damaged ones may stand between. */
const LOOKED_UP = 6

/** A heading may stand in a comment. */
export const headingFields = (line: string, delimiter: Delimiter): readonly string[] =>
  fieldsOf(line.replace(/^#+\s*/, ''), delimiter)

const isUnitRow = (fields: readonly string[]): boolean =>
  fields.some((field) => field !== '') &&
  fields.every(
    (field) =>
      field === '' ||
      unitNamedSo(field) !== null ||
      /^[([]?h{1,2}:m{1,2}(?::s{1,2})?[)\]]?$|^[([]?[ymdhs:/. -]+[)\]]?$/i.test(field),
  )

const hasReading = (fields: readonly string[]): boolean =>
  fields.some((field) => field !== '' && (numberish(field) || timeish(field)) && /\d/.test(field))

/** How many of its fields say what stands under them. */
const saying = (fields: readonly string[]): number => fields.filter((field) => roleOf(field) !== null).length

/** The nearest of those lines above the readings that say most of what stands under them. */
const headingsAbove = (above: readonly string[], delimiter: Delimiter, width: number): Headings => {
  const none = Array.from({ length: width }, () => '')
  const fitting = above
    .slice(-LOOKED_UP)
    .map((line) => headingFields(line, delimiter))
    .filter((fields) => fields.length === width && !hasReading(fields) && fields.some((one) => one !== ''))
    .reverse()
  const named = fitting.filter((fields) => !isUnitRow(fields))
  const best = named.reduce<readonly string[] | undefined>(
    (kept, fields) => (kept === undefined || saying(fields) > saying(kept) ? fields : kept),
    undefined,
  )
  const [units = none] = fitting.filter(isUnitRow)
  return best === undefined ? { headers: units, units: none } : { headers: best, units }
}
