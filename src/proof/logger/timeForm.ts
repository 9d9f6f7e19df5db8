import type { DateOrder, DayClock, TimeMapping, TimeUnit } from './mapping.ts'

const SECONDS: Readonly<Record<TimeUnit, number>> = { ms: 0.001, s: 1, min: 60, h: 3600 }

const CLOCK = /^(\d{1,3}):(\d{2})(?::(\d{2})([.,]\d+)?)?(?: ?([AaPp])\.?[Mm]\.?)?$/

/** How a clock is written. `first:second`: minutes and seconds, or hours and minutes. */
export type ClockShape = 'long' | 'short' | 'long am/pm' | 'short am/pm'

interface Clock {
  readonly shape: ClockShape
  readonly first: number
  readonly second: number
  /** With its decimals. */
  readonly third: number
  readonly afternoon: boolean
}

const clockOf = (text: string): Clock | null => {
  const found = CLOCK.exec(text)
  if (found === null) return null
  const [, first = '', second = '', third, part = '', half] = found
  const length = third === undefined ? 'short' : 'long'
  return {
    shape: half === undefined ? length : `${length} am/pm`,
    first: Number(first),
    second: Number(second),
    third: Number(third ?? 0) + Number(`0${part.replace(',', '.')}` || 0),
    afternoon: half?.toLowerCase() === 'p',
  }
}

export const clockShapeOf = (text: string): ClockShape | null => clockOf(text)?.shape ?? null

/** Hours, or minutes where the clock is short, that the field shows first. */
export const firstOfClock = (text: string): number | null => clockOf(text)?.first ?? null

const SHAPES: Readonly<Record<DayClock, ClockShape>> = {
  'hours:minutes:seconds': 'long',
  'hours:minutes': 'short',
  'hours:minutes:seconds am/pm': 'long am/pm',
  'hours:minutes am/pm': 'short am/pm',
}

export const dayClockOf = (shape: ClockShape): DayClock =>
  (Object.keys(SHAPES) as DayClock[]).find((one) => SHAPES[one] === shape) as DayClock

/** Seconds after midnight of a clock that is written exactly so; null for anything else, such as 823 hours. */
const ofDay = (text: string, form: DayClock): number | null => {
  const clock = clockOf(text)
  if (clock === null || clock.shape !== SHAPES[form] || clock.second > 59 || clock.third >= 60) return null
  const halves = form.endsWith('am/pm')
  if (halves ? clock.first < 1 || clock.first > 12 : clock.first > 23) return null
  const hour = halves ? (clock.first % 12) + (clock.afternoon ? 12 : 0) : clock.first
  return hour * 3600 + clock.second * 60 + clock.third
}

/** Seconds since the start; as many hours or minutes as there were. */
const ofElapsedClock = (text: string, short: boolean): number | null => {
  const clock = clockOf(text)
  if (clock === null || clock.shape !== (short ? 'short' : 'long')) return null
  if (clock.second > 59 || clock.third >= 60) return null
  return short ? clock.first * 60 + clock.second : clock.first * 3600 + clock.second * 60 + clock.third
}

/** One mark between the three throughout. */
const DATE = /^(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})$/

const PLACES: Readonly<Record<DateOrder, readonly [year: number, month: number, day: number]>> = {
  'year month day': [1, 3, 4],
  'day month year': [4, 3, 1],
  'month day year': [4, 1, 3],
}

/** Seconds from 1970 to the beginning of the day, as if the clock ran on universal time. */
export const ofDate = (text: string, order: DateOrder): number | null => {
  const found = DATE.exec(text)
  if (found === null) return null
  const [year, month, day] = PLACES[order].map((place) => found[place] as string) as [string, string, string]
  if (year.length !== 4 && year.length !== 2) return null
  const full = year.length === 2 ? 2000 + Number(year) : Number(year)
  const time = Date.UTC(full, Number(month) - 1, Number(day))
  const back = new Date(time)
  return back.getUTCMonth() === Number(month) - 1 && back.getUTCDate() === Number(day) ? time / 1000 : null
}

const BOTH = /^(\S+?)[T ]+(\d{1,3}:.*?)(?:Z|[+-]\d{2}:?\d{2})?$/

/**
 * Reads the time of a row [s], or null. Dates count from 1970 as the logger's own clock shows them; whether that runs
 * on summer time is for the alignment with the event log to find.
 */
export const timeReader = (
  time: TimeMapping,
  number: (field: string) => number | null,
): ((fields: readonly string[]) => number | null) => {
  const at = (fields: readonly string[], column: number): string => fields[column] ?? ''
  switch (time.form) {
    case 'elapsed':
      return (fields) => {
        const value = number(at(fields, time.column))
        return value === null ? null : value * SECONDS[time.unit]
      }
    case 'seconds since 1970':
    case 'milliseconds since 1970':
      return (fields) => {
        const value = number(at(fields, time.column))
        return value === null ? null : value * (time.form === 'seconds since 1970' ? 1 : 0.001)
      }
    case 'elapsed clock':
      return (fields) => ofElapsedClock(at(fields, time.column), time.clock === 'minutes:seconds')
    case 'time of day':
      return (fields) => ofDay(at(fields, time.column), time.clock)
    case 'date and time':
      return (fields) => {
        const [, date, clock] = BOTH.exec(at(fields, time.column)) ?? []
        const day = date === undefined ? null : ofDate(date, time.order)
        const seconds = clock === undefined ? null : ofDay(clock, time.clock)
        return day === null || seconds === null ? null : day + seconds
      }
    case 'date beside time':
      return (fields) => {
        const day = ofDate(at(fields, time.date), time.order)
        const seconds = ofDay(at(fields, time.column), time.clock)
        return day === null || seconds === null ? null : day + seconds
      }
  }
}

/** The date in a field of date and time, and the clock. */
export const dateIn = (field: string): string | null => BOTH.exec(field)?.[1] ?? null
export const clockIn = (field: string): string | null => BOTH.exec(field)?.[2] ?? null
export const isClock = (field: string): boolean => CLOCK.test(field)
export const isDate = (field: string): boolean => DATE.test(field)
export const isDateAndTime = (field: string): boolean => {
  const [, date, clock] = BOTH.exec(field) ?? []
  return date !== undefined && clock !== undefined && DATE.test(date) && CLOCK.test(clock)
}
