import type { DateOrder, TimeMapping, TimeUnit } from './mapping.ts'

const SECONDS: Readonly<Record<TimeUnit, number>> = { ms: 0.001, s: 1, min: 60, h: 3600 }

const CLOCK = /^(\d{1,3}):(\d{2})(?::(\d{2})([.,]\d+)?)?(?: ?([AaPp])\.?[Mm]\.?)?$/

/** Seconds of `9:12:04.5 PM`, `0:12:04`; null for what is no such time. */
const ofClock = (text: string): number | null => {
  const found = CLOCK.exec(text)
  if (found === null) return null
  const [, hours = '', minutes = '', seconds = '0', part = '', half] = found
  if (Number(minutes) > 59 || Number(seconds) > 59) return null
  if (half !== undefined && (Number(hours) < 1 || Number(hours) > 12)) return null
  const afternoon = half !== undefined && half.toLowerCase() === 'p'
  const hour = half === undefined ? Number(hours) : (Number(hours) % 12) + (afternoon ? 12 : 0)
  return hour * 3600 + Number(minutes) * 60 + Number(seconds) + Number(`0${part.replace(',', '.')}` || 0)
}

const DATE = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})$/

const PLACES: Readonly<Record<DateOrder, readonly [year: number, month: number, day: number]>> = {
  'year month day': [1, 2, 3],
  'day month year': [3, 2, 1],
  'month day year': [3, 1, 2],
}

/** Seconds from 1970 to the beginning of the day, as if the clock ran on universal time. */
const ofDate = (text: string, order: DateOrder): number | null => {
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
    case 'hours:minutes:seconds':
    case 'hours:minutes':
      return (fields) => ofClock(at(fields, time.column))
    case 'minutes:seconds':
      return (fields) => {
        const value = ofClock(at(fields, time.column))
        return value === null ? null : value / 60
      }
    case 'date and time':
      return (fields) => {
        const [, date, clock] = BOTH.exec(at(fields, time.column)) ?? []
        const day = date === undefined ? null : ofDate(date, time.order)
        const seconds = clock === undefined ? null : ofClock(clock)
        return day === null || seconds === null || seconds >= 86_400 ? null : day + seconds
      }
    case 'date, time':
      return (fields) => {
        const day = ofDate(at(fields, time.date), time.order)
        const seconds = ofClock(at(fields, time.column))
        return day === null || seconds === null || seconds >= 86_400 ? null : day + seconds
      }
  }
}

/** Whether dates such as `03/04/2031` can be told; the order where they can. */
export const dateOrderOf = (dates: readonly string[]): DateOrder | 'either' | null => {
  const parts = dates.map((date) => DATE.exec(date))
  if (parts.length === 0 || parts.some((part) => part === null)) return null
  const found = parts as RegExpExecArray[]
  if (found.every(([, year = '']) => year.length === 4)) return 'year month day'
  // With points between them, days come first: German, Russian and Turkish habit; common practice, no source.
  if (dates.every((date) => date.includes('.'))) return 'day month year'
  if (found.some(([, first]) => Number(first) > 12)) return 'day month year'
  if (found.some(([, , second]) => Number(second) > 12)) return 'month day year'
  return 'either'
}

/** The date in a field of date and time. */
export const dateIn = (field: string): string | null => BOTH.exec(field)?.[1] ?? null
export const isClock = (field: string): boolean => CLOCK.test(field)
export const isDate = (field: string): boolean => DATE.test(field)
/** `12:30`: minutes and seconds, or hours and minutes. */
export const isShortClock = (field: string): boolean => /^\d{1,3}:\d{2}$/.test(field)
