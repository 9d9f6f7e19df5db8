import type { DateOrder } from './mapping.ts'
import { linesThatSettle } from './support.ts'
import { ofDate } from './timeForm.ts'

const ORDERS: readonly DateOrder[] = ['year month day', 'day month year', 'month day year']

/**
 * Orders of day, month and year that the dates leave open, the likeliest first. One is certain; none: these are no
 * dates. An order is dropped when enough lines have no such day in it: one date with a damaged figure in it is not
 * enough.
 */
export const dateOrdersOf = (dates: readonly string[]): readonly DateOrder[] => {
  if (dates.length === 0) return []
  // With points between them, days come first: German, Russian and Turkish habit; common practice, no source.
  const pointed = dates.filter((date) => date.includes('.')).length > dates.length / 2
  const read = ORDERS.filter((order) => !(pointed && order === 'month day year'))
    .map((order) => ({ order, lines: dates.filter((date) => ofDate(date, order) !== null).length }))
    .sort((a, b) => b.lines - a.lines)
  const [best] = read
  if (best === undefined || best.lines <= dates.length / 2) return []
  const enough = linesThatSettle(dates.length)
  return read
    .filter(
      ({ order, lines }) =>
        best.lines - lines < enough &&
        // What no line can be read by is no question either, however short the file.
        lines > 0 &&
        (order === best.order || dates.some((date) => differ(date, best.order, order))),
    )
    .map(({ order }) => order)
}

const differ = (date: string, one: DateOrder, other: DateOrder): boolean => {
  const [a, b] = [ofDate(date, one), ofDate(date, other)]
  return a !== null && b !== null && a !== b
}
