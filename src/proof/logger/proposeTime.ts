import { dateOrdersOf } from './dateOrder.ts'
import type { Answers, DayClock, Question, TimeMapping, TimeUnit } from './mapping.ts'
import type { Shape } from './shape.ts'
import { linesThatSettle } from './support.ts'
import {
  type ClockShape,
  clockIn,
  clockShapeOf,
  dateIn,
  dayClockOf,
  firstOfClock,
  isClock,
  isDate,
  isDateAndTime,
} from './timeForm.ts'
import { roleOf, saysElapsed, unitIn, unitNamedSo } from './words.ts'

export interface TimeProposal {
  readonly time: TimeMapping | null
  readonly questions: readonly Question[]
  /** Columns that the time is in, as far as that is known while something is still asked. */
  readonly columns: readonly number[]
}

const TIME_UNITS: readonly TimeUnit[] = ['s', 'min', 'h', 'ms']

const found = (time: TimeMapping): TimeProposal => ({
  time,
  questions: [],
  columns: time.form === 'date beside time' ? [time.date, time.column] : [time.column],
})
const asked = (question: Question, ...columns: readonly number[]): TimeProposal => ({
  time: null,
  questions: [question],
  columns,
})

/** Fields of one column in the lines of readings, those that hold something. */
export type Column = readonly string[]

const count = (column: Column, test: (field: string) => boolean): number => column.filter(test).length

/** More than half: a few damaged lines make no other column of it, and are told when the file is read. */
const mostly = (column: Column, test: (field: string) => boolean): boolean =>
  count(column, test) > column.length / 2

const firstMostly = (columns: readonly Column[], test: (field: string) => boolean): number =>
  columns.findIndex((column) => mostly(column, test))

/** Of two written as often the fuller: what a damaged clock has lost, it has lost. */
const FULLEST: readonly ClockShape[] = ['long am/pm', 'long', 'short am/pm', 'short']

/** How most of the clocks are written. */
const commonShape = (clocks: readonly string[]): ClockShape => {
  const shapes = clocks.map(clockShapeOf)
  const times = (shape: ClockShape): number => shapes.filter((one) => one === shape).length
  const commonest = (some: readonly ClockShape[]): ClockShape =>
    some.reduce((kept, one) => (times(one) > times(kept) ? one : kept))
  const most = commonest(FULLEST)
  const long = commonest(['long am/pm', 'long'])
  const lead = times(most) - times(long)
  return times(long) > 0 && lead < linesThatSettle(clocks.length) ? long : most
}

type WithOrder = (order: 'year month day' | 'day month year' | 'month day year') => TimeMapping

const withOrder = (dates: readonly string[], answers: Answers, make: WithOrder): TimeProposal | null => {
  const [order, ...others] = dateOrdersOf(dates)
  if (order === undefined) return null
  if (others.length === 0) return found(make(order))
  const choices = [order, ...others].sort()
  const answer = choices.find((one) => one === answers.date)
  if (answer !== undefined) return found(make(answer))
  const seen = dates[0] ?? ''
  return asked(
    {
      key: 'date',
      ask: choices.includes('year month day')
        ? `Which is the year in ${seen}, which the month, which the day?`
        : `Which is the day in ${seen}, which the month?`,
      seen,
      choices,
    },
    ...found(make(order)).columns,
  )
}

const dayClock = (clocks: readonly string[]): DayClock => dayClockOf(commonShape(clocks))

const ofDateAndTime = (column: number, fields: Column, answers: Answers): TimeProposal | null => {
  const both = fields.filter(isDateAndTime)
  const clock = dayClock(both.map((field) => clockIn(field) as string))
  return withOrder(
    both.map((field) => dateIn(field) as string),
    answers,
    (order) => ({ form: 'date and time', column, order, clock }),
  )
}

const ofDateBesideTime = (
  date: number,
  column: number,
  columns: readonly Column[],
  answers: Answers,
): TimeProposal | null => {
  const clock = dayClock((columns[column] ?? []).filter(isClock))
  return withOrder((columns[date] ?? []).filter(isDate), answers, (order) => ({
    form: 'date beside time',
    date,
    column,
    order,
    clock,
  }))
}

/** A fifth of a column of dates is no accident; a judgement [1]. */
const SOME = 0.2

/** A column that may hold the day, though most of its lines do not say one. */
const doubtfulDate = (shape: Shape, columns: readonly Column[], clock: number): number =>
  columns.findIndex(
    (column, i) =>
      i !== clock &&
      (roleOf(shape.headers[i] ?? '') === 'date' ||
        (count(column, isDate) >= SOME * column.length && column.some(isDate))),
  )

const askForDate = (
  shape: Shape,
  date: number,
  clock: number,
  columns: readonly Column[],
  answers: Answers,
): TimeProposal | null => {
  const fields = columns[date] ?? []
  const answer = answers['date column']
  if (answer === 'without it') return null
  if (answer === 'with it') {
    const taken = ofDateBesideTime(date, clock, columns, answers)
    if (taken !== null) return taken
  }
  const seen = `${shape.headers[date] || `column ${date + 1}`}: ${fields.slice(0, 3).join(', ')}`
  return asked(
    {
      key: 'date column',
      ask: `Not every line says its day in ${shape.headers[date] || `column ${date + 1}`}. Read the time with it, or without?`,
      seen,
      choices: fields.some(isDate) ? ['with it', 'without it'] : ['without it'],
    },
    date,
    clock,
  )
}

/** Whether a long clock counts from the start: it says so, or goes on past the day. */
const countsFromStart = (header: string, clocks: readonly string[]): boolean => {
  const past = count(clocks, (clock) => (firstOfClock(clock) ?? 0) > 23)
  return saysElapsed(header) || past >= linesThatSettle(clocks.length)
}

const ofClock = (column: number, shape: Shape, fields: Column, answers: Answers): TimeProposal => {
  const clocks = fields.filter(isClock)
  const written = commonShape(clocks)
  if (written === 'long' && countsFromStart(shape.headers[column] ?? '', clocks))
    return found({ form: 'elapsed clock', column, clock: 'hours:minutes:seconds' })
  if (written !== 'short') return found({ form: 'time of day', column, clock: dayClockOf(written) })
  const answer = answers['time form']
  if (answer === 'minutes:seconds') return found({ form: 'elapsed clock', column, clock: answer })
  if (answer === 'hours:minutes') return found({ form: 'time of day', column, clock: answer })
  const seen = clocks[0] ?? ''
  return asked(
    {
      key: 'time form',
      ask: `Is ${seen} minutes and seconds, or hours and minutes?`,
      seen,
      choices: ['minutes:seconds', 'hours:minutes'],
    },
    column,
  )
}

type Epoch = 'seconds since 1970' | 'milliseconds since 1970'

/** Past the year 2001 in seconds, and before 2100; the same in milliseconds. */
const epochOf = (fields: Column): Epoch | null => {
  const between = (low: number, high: number) => (field: string) => {
    const value = Number(field.replace(',', '.'))
    return value > low && value < high
  }
  if (mostly(fields, between(1e9, 4.2e9))) return 'seconds since 1970'
  if (mostly(fields, between(1e12, 4.2e12))) return 'milliseconds since 1970'
  return null
}

const EPOCH_UNIT: Readonly<Record<Epoch, TimeUnit>> = {
  'seconds since 1970': 's',
  'milliseconds since 1970': 'ms',
}

const NUMBER = /^[+-]?\d[\d.,' ]*$/

const ofNumbers = (shape: Shape, columns: readonly Column[], answers: Answers): TimeProposal => {
  const isNumeric = (column: number): boolean => mostly(columns[column] ?? [], (field) => NUMBER.test(field))
  const named = shape.headers.findIndex((header, i) => roleOf(header) === 'time' && isNumeric(i))
  const answered = answers['time column'] === undefined ? -1 : Number(answers['time column']) - 1
  const column = named >= 0 ? named : answered
  if (!(column >= 0 && column < shape.width) || !isNumeric(column))
    return asked({
      key: 'time column',
      ask: 'Which column is the time?',
      seen: shape.headers.filter((header) => header !== '').join(', ') || 'no headings',
      choices: Array.from({ length: shape.width }, (_, i) => i)
        .filter(isNumeric)
        .map((i) => String(i + 1)),
    })
  const fields = columns[column] ?? []
  const epoch = epochOf(fields)
  const header = shape.headers[column] ?? ''
  const said = unitIn(header) ?? unitNamedSo(shape.units[column] ?? '')
  const ofHeader = said?.quantity === 'time' ? said.unit : undefined
  if (epoch !== null && (ofHeader === undefined || ofHeader === EPOCH_UNIT[epoch]))
    return found({ form: epoch, column })
  const unit = ofHeader ?? TIME_UNITS.find((one) => one === answers['time unit'])
  if (unit !== undefined) return found({ form: 'elapsed', column, unit })
  const seen = `${header || `column ${column + 1}`}: ${fields.slice(0, 3).join(', ')}`
  return asked(
    {
      key: 'time unit',
      ask: 'In which unit does the time count?',
      seen,
      choices: TIME_UNITS,
    },
    column,
  )
}

/** What the time of a row is read from. */
export const proposeTime = (shape: Shape, columns: readonly Column[], answers: Answers): TimeProposal => {
  const both = firstMostly(columns, isDateAndTime)
  if (both >= 0) {
    const time = ofDateAndTime(both, columns[both] ?? [], answers)
    if (time !== null) return time
  }
  const clock = firstMostly(columns, isClock)
  if (clock < 0) return ofNumbers(shape, columns, answers)
  const date = firstMostly(columns, isDate)
  const dated = date < 0 ? null : ofDateBesideTime(date, clock, columns, answers)
  if (dated !== null) return dated
  const doubtful = doubtfulDate(shape, columns, clock)
  const question = doubtful < 0 ? null : askForDate(shape, doubtful, clock, columns, answers)
  return question ?? ofClock(clock, shape, columns[clock] ?? [], answers)
}
