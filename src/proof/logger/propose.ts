import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import type { Answers, ChannelMapping, Mapping, Question, TimeMapping } from './mapping.ts'
import { marksOf } from './marks.ts'
import { numberish } from './numbers.ts'
import { type Column, proposeTime } from './proposeTime.ts'
import { type Shape, shapeOf } from './shape.ts'
import { fieldsOf, linesOf } from './table.ts'
import { belongsTo, roleOf, unitIn, unitNamedSo } from './words.ts'

/** A mapping that can be read with, or what must be asked before there is one. */
export type Proposal =
  | { readonly kind: 'mapping'; readonly mapping: Mapping }
  | { readonly kind: 'questions'; readonly questions: readonly Question[] }

const problem = (code: string, value: string, allowed: string, fix: string): Problem => ({
  code: `logger.${code}`,
  field: 'file',
  value,
  allowed,
  fix,
})

const UNITS = { temperature: ['°C', '°F', 'K'], mass: ['g', 'kg', 'oz', 'lb'] } as const
const KINDS = ['temperature', 'mass', 'nothing'] as const

interface ChannelProposal {
  readonly channel: ChannelMapping | null
  readonly questions: readonly Question[]
}

const NONE: ChannelProposal = { channel: null, questions: [] }

const channelOf = (column: number, shape: Shape, fields: Column, answers: Answers): ChannelProposal => {
  const header = shape.headers[column] ?? ''
  const number = column + 1
  const name = header === '' ? `column ${number}` : header
  const role = roleOf(header)
  if (role === 'number' || fields.length === 0) return NONE
  const found = unitIn(header) ?? unitNamedSo(shape.units[column] ?? '')
  const told = role === 'temperature' || role === 'mass' ? role : null
  const byUnit = found?.quantity === 'temperature' || found?.quantity === 'mass' ? found.quantity : null
  const answered = KINDS.find((one) => one === answers[`column ${number}`])
  const quantity = told ?? byUnit ?? answered
  const seen = `${name}: ${fields.slice(0, 3).join(', ')}`
  const numbers = fields.some((field) => /\d/.test(field) && numberish(field))
  // Words; but a thermocouple that was open all the time is one all the same.
  if (!numbers && (quantity === undefined || quantity === 'nothing' || !belongsTo(quantity, found)))
    return NONE
  if (quantity === undefined)
    return {
      channel: null,
      questions: [{ key: `column ${number}`, ask: `What does ${name} hold?`, seen, choices: KINDS }],
    }
  if (quantity === 'nothing') return NONE
  const answer = UNITS[quantity].find((one) => one === answers[`unit ${number}`])
  const unit = belongsTo(quantity, found) ? (found.unit as ChannelMapping['unit']) : answer
  if (unit === undefined)
    return {
      channel: null,
      questions: [
        { key: `unit ${number}`, ask: `In which unit is ${name}?`, seen, choices: UNITS[quantity] },
      ],
    }
  return { channel: { column, name, quantity, unit }, questions: [] }
}

const countsInNumbers = (time: TimeMapping | null): boolean =>
  time === null ||
  time.form === 'elapsed' ||
  time.form === 'seconds since 1970' ||
  time.form === 'milliseconds since 1970'

/** A comma between fields and a comma in numbers: nobody can tell them apart again. */
const twoCommas = (shape: Shape, lines: readonly string[]): boolean => {
  if (shape.delimiter !== ',') return false
  const header = fieldsOf(lines[shape.skip - 1] ?? '', ',')
  const names = header.filter((field) => /\p{L}/u.test(field)).length
  return (
    names >= 2 &&
    names === header.length &&
    shape.width > header.length &&
    shape.width >= 2 * header.length - 1
  )
}

/**
 * Looks at a logger's file and proposes how to read it. What the file does not tell is asked, never guessed: whether
 * a comma sets off decimals or thousands, whether day or month comes first, the unit of a column, what a column is.
 * Ask again with the answers.
 */
export const proposeMapping = (text: string, answers: Answers = {}): Outcome<Proposal> => {
  const lines = linesOf(text)
  const shape = shapeOf(lines)
  if (shape === null)
    return bad(
      problem(
        'no-table',
        lines.length === 0
          ? 'an empty file'
          : shown(lines.find((line) => line.trim() !== '') ?? 'nothing but blanks'),
        'at least three lines of readings with as many fields each, apart by comma, semicolon, tab, | or blanks',
        'Export the readings as CSV: one line for each moment, its time in it.',
      ),
    )
  if (twoCommas(shape, lines))
    return bad(
      problem(
        'two-commas',
        shown(lines[shape.skip]),
        'another mark between fields where numbers have a decimal comma',
        'Export it again with semicolons or tabs between the fields, or with decimal points.',
      ),
    )
  const rows = lines
    .slice(shape.skip)
    .map((line) => fieldsOf(line, shape.delimiter))
    .filter((fields) => fields.length === shape.width)
  const columns: readonly Column[] = Array.from({ length: shape.width }, (_, i) =>
    rows.map((fields) => fields[i] as string).filter((field) => field !== ''),
  )
  const { time, questions: ofTime, columns: taken } = proposeTime(shape, columns, answers)
  const { marks, question, contradiction } = marksOf(
    rows.map((fields) => fields.filter((_, i) => !taken.includes(i) || countsInNumbers(time))),
    answers.decimal,
  )
  if (contradiction !== null)
    return bad(
      problem(
        'mixed-marks',
        contradiction,
        'one mark for decimals throughout',
        'Two exports seem to be in one file, or a line was cut: look at it, and export again.',
      ),
    )
  const found = columns.map((fields, i) => (taken.includes(i) ? NONE : channelOf(i, shape, fields, answers)))
  const waitsForTime = ofTime.some(({ key }) => key === 'time column')
  const questions = [
    ...(question === null ? [] : [question]),
    ...ofTime,
    // Which columns are left over is known once the time has its own.
    ...(waitsForTime
      ? []
      : found.flatMap((one, i) => (ofTime.length > 0 && isTimeLike(shape, i) ? [] : one.questions))),
  ]
  if (questions.length > 0 || time === null) return good({ kind: 'questions', questions })
  const channels = found.flatMap(({ channel }) => (channel === null ? [] : [channel]))
  if (channels.length === 0)
    return bad(
      problem(
        'no-channel',
        shape.headers.join(', ') || 'no headings',
        'at least one column of temperatures or of weights',
        'Say what the columns hold, or name them in the first line of the file.',
      ),
    )
  const { delimiter, skip, width } = shape
  return good({
    kind: 'mapping',
    mapping: {
      format: 'tinwright/logger@1',
      delimiter,
      ...marks,
      skip,
      width,
      headings: shape.headers,
      units: shape.units,
      time,
      channels,
    },
  })
}

const isTimeLike = (shape: Shape, column: number): boolean => {
  const role = roleOf(shape.headers[column] ?? '')
  return role === 'time' || role === 'date'
}
