import type { Answers, DateOrder, Question, TimeMapping, TimeUnit } from './mapping.ts'
import type { Shape } from './shape.ts'
import { dateIn, dateOrderOf, isClock, isDate, isShortClock } from './timeForm.ts'
import { roleOf, unitIn, unitNamedSo } from './words.ts'

export interface TimeProposal {
  readonly time: TimeMapping | null
  readonly questions: readonly Question[]
}

const ORDERS: readonly DateOrder[] = ['day month year', 'month day year']
const TIME_UNITS: readonly TimeUnit[] = ['s', 'min', 'h', 'ms']

const orderFor = (
  dates: readonly string[],
  answers: Answers,
): { readonly order: DateOrder | null; readonly question: Question | null } => {
  const told = dateOrderOf(dates)
  if (told !== 'either') return { order: told, question: null }
  const answer = ORDERS.find((one) => one === answers.date)
  const seen = dates[0] ?? ''
  return answer !== undefined
    ? { order: answer, question: null }
    : {
        order: null,
        question: {
          key: 'date',
          ask: `Which is the day in ${seen}, which the month?`,
          seen,
          choices: ORDERS,
        },
      }
}

/** Fields of one column in the lines of readings, those that hold something. */
export type Column = readonly string[]

const mostly = (column: Column, test: (field: string) => boolean): boolean =>
  column.length > 0 && column.filter(test).length >= 0.9 * column.length

const withDates = (column: number, columns: readonly Column[], answers: Answers): TimeProposal | null => {
  const fields = columns[column] ?? []
  if (mostly(fields, (field) => dateIn(field) !== null && isDate(dateIn(field) as string))) {
    const { order, question } = orderFor(
      fields.map(dateIn).filter((date) => date !== null),
      answers,
    )
    if (question !== null) return { time: null, questions: [question] }
    return order === null ? null : { time: { form: 'date and time', column, order }, questions: [] }
  }
  if (!mostly(fields, isDate)) return null
  const clock = columns.findIndex((other, i) => i !== column && mostly(other, isClock))
  if (clock < 0) return null
  const { order, question } = orderFor(fields.filter(isDate), answers)
  if (question !== null) return { time: null, questions: [question] }
  return order === null
    ? null
    : { time: { form: 'date, time', date: column, column: clock, order }, questions: [] }
}

const ofClock = (column: number, fields: Column, answers: Answers): TimeProposal | null => {
  if (!mostly(fields, isClock)) return null
  if (!mostly(fields, isShortClock)) return { time: { form: 'hours:minutes:seconds', column }, questions: [] }
  const forms = ['minutes:seconds', 'hours:minutes'] as const
  const form = forms.find((one) => one === answers['time form'])
  if (form !== undefined) return { time: { form, column }, questions: [] }
  const seen = fields[0] ?? ''
  return {
    time: null,
    questions: [
      {
        key: 'time form',
        ask: `Is ${seen} minutes and seconds, or hours and minutes?`,
        seen,
        choices: forms,
      },
    ],
  }
}

/** Past the year 2001 in seconds, and before 2100; the same in milliseconds. */
const epochOf = (fields: Column): TimeMapping['form'] | null => {
  const values = fields.map((field) => Number(field.replace(',', '.')))
  if (values.every((value) => value > 1e9 && value < 4.2e9)) return 'seconds since 1970'
  if (values.every((value) => value > 1e12 && value < 4.2e12)) return 'milliseconds since 1970'
  return null
}

const ofNumbers = (shape: Shape, columns: readonly Column[], answers: Answers): TimeProposal => {
  const named = shape.headers.findIndex((header) => roleOf(header) === 'time')
  const column =
    named >= 0 ? named : answers['time column'] === undefined ? -1 : Number(answers['time column']) - 1
  if (column < 0 || column >= shape.width)
    return {
      time: null,
      questions: [
        {
          key: 'time column',
          ask: 'Which column is the time?',
          seen: shape.headers.join(', ') || 'no headers',
          choices: Array.from({ length: shape.width }, (_, i) => String(i + 1)),
        },
      ],
    }
  const fields = columns[column] ?? []
  const epoch = epochOf(fields)
  if (epoch === 'seconds since 1970' || epoch === 'milliseconds since 1970')
    return { time: { form: epoch, column }, questions: [] }
  const header = shape.headers[column] ?? ''
  const said = unitIn(header) ?? unitNamedSo(shape.units[column] ?? '')
  const unit = said?.quantity === 'time' ? said.unit : TIME_UNITS.find((one) => one === answers['time unit'])
  if (unit !== undefined) return { time: { form: 'elapsed', column, unit }, questions: [] }
  const seen = `${header || `column ${column + 1}`}: ${fields.slice(0, 3).join(', ')}`
  return {
    time: null,
    questions: [{ key: 'time unit', ask: 'In which unit does the time count?', seen, choices: TIME_UNITS }],
  }
}

/** What the time of a row is read from. */
export const proposeTime = (shape: Shape, columns: readonly Column[], answers: Answers): TimeProposal => {
  for (let column = 0; column < shape.width; column++) {
    const found = withDates(column, columns, answers)
    if (found !== null) return found
  }
  for (let column = 0; column < shape.width; column++) {
    const found = ofClock(column, columns[column] ?? [], answers)
    if (found !== null) return found
  }
  return ofNumbers(shape, columns, answers)
}
