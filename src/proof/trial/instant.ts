import { bad, good, type Outcome } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'

const FORM = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2}(?:\.\d{1,3})?)?(?:Z|[+-]\d{2}:\d{2})$/

const ALLOWED = 'a date, a time and a time zone, such as "2031-05-17T09:12:04Z" or "2031-05-17T11:12+02:00"'

/**
 * A moment as a phone writes it (ISO 8601) [s since 1970-01-01T00:00Z]. The zone must be there: without it two phones
 * cannot be brought together.
 */
export const readInstant = (value: unknown): Outcome<number> => {
  const wrong = (code: string, fix: string): Outcome<never> =>
    bad({ code: `time.${code}`, field: '', value: shown(value), allowed: ALLOWED, fix })
  if (typeof value !== 'string') return wrong('not-text', 'Write it in quotation marks.')
  if (!FORM.test(value))
    return /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(value)
      ? wrong('no-zone', 'Add the time zone: Z for universal time, or such as +02:00.')
      : wrong('form', 'Write year, month, day, T, hours, minutes and the zone.')
  const time = Date.parse(value)
  // Date.parse takes 31 February for 3 March.
  const day = Number(value.slice(8, 10))
  const monthDays = new Date(Date.UTC(Number(value.slice(0, 4)), Number(value.slice(5, 7)), 0)).getUTCDate()
  return Number.isNaN(time) || day > monthDays
    ? wrong('no-such', 'There is no such day or time: look again.')
    : good(time / 1000)
}

/** As `readInstant` reads it, in universal time, to the millisecond where there are any. */
export const instantText = (seconds: number): string =>
  new Date(Math.round(seconds * 1000)).toISOString().replace('.000Z', 'Z')

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/

/** A day of the calendar, kept as written. */
export const readDay = (value: unknown): Outcome<string> => {
  const [, year, month, day] = (typeof value === 'string' ? DAY.exec(value) : null) ?? []
  const days = new Date(Date.UTC(Number(year), Number(month), 0)).getUTCDate()
  return year !== undefined &&
    Number(month) >= 1 &&
    Number(month) <= 12 &&
    Number(day) >= 1 &&
    Number(day) <= days
    ? good(value as string)
    : bad({
        code: 'day.form',
        field: '',
        value: shown(value),
        allowed: 'a day such as "2031-05-17"',
        fix: 'Write year, month and day in digits with hyphens between them.',
      })
}
