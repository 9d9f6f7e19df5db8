import { BadInput } from '#basis/problem.ts'

/** The day a document bears, from `2031-05-17`. Throws `BadInput` for a day that is none. */
export const dayOf = (date: string): Date => {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(date) ? new Date(`${date}T00:00:00Z`) : new Date(Number.NaN)
  if (!Number.isNaN(day.getTime()) && day.toISOString().startsWith(date)) return day
  throw new BadInput([
    {
      code: 'date.form',
      field: 'date',
      value: date,
      allowed: 'a day of the calendar written as year-month-day, such as 2031-05-17',
      fix: 'Write the year with four digits, month and day with two.',
    },
  ])
}
