import { bad, good, type Outcome } from '#basis/problem.ts'

/** What a spreadsheet would take for a formula, and our own mark against it. */
const FORMULA = /^['=+\-@\t]/
const MARK = "'"

const cell = (text: string): string => {
  const safe = FORMULA.test(text) ? `${MARK}${text}` : text
  return /[",;\t\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

/**
 * Comma-separated values (RFC 4180). A text that a spreadsheet would take for a formula gets an apostrophe before it,
 * which reading takes away again.
 */
export const formatCsv = (rows: readonly (readonly string[])[]): string =>
  `${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`

const DELIMITERS = [',', ';', '\t'] as const

/** The mark that stands most often in the first line, outside of quotation marks. */
const delimiterOf = (text: string): string => {
  const [line = ''] = text.replace(/"[^"]*"/g, '').split(/\r?\n/, 1)
  const count = (mark: string): number => line.split(mark).length
  return [...DELIMITERS].sort((a, b) => count(b) - count(a))[0] ?? ','
}

const unmarked = (text: string): string => (text.startsWith(MARK) ? text.slice(1) : text)

/** Reads them back: commas, semicolons or tabs, whichever the first line has. Empty lines are left out. */
export const readCsv = (text: string): Outcome<readonly (readonly string[])[]> => {
  const body = text.startsWith('\ufeff') ? text.slice(1) : text
  const delimiter = delimiterOf(body)
  const rows: string[][] = []
  let row: string[] = []
  let at = 0
  const end = (): void => {
    if (row.length > 1 || row[0] !== '') rows.push(row)
    row = []
  }
  while (at < body.length) {
    let value = ''
    if (body[at] === '"') {
      const from = at
      at++
      for (;;) {
        const close = body.indexOf('"', at)
        if (close < 0)
          return bad({
            code: 'csv.open-quote',
            field: `row ${rows.length + 1}`,
            value: body.slice(from, from + 40),
            allowed: 'a quotation mark at both ends of a field',
            fix: 'Close the field with a quotation mark, or write two for one inside of it.',
          })
        value += body.slice(at, close)
        at = close + 1
        if (body[at] !== '"') break
        value += '"'
        at++
      }
    }
    // What follows up to the next mark: all of a plain field; nothing after a quoted one.
    let stop = at
    while (stop < body.length && body[stop] !== delimiter && body[stop] !== '\n') stop++
    value += body.slice(at, stop).replace(/\r$/, '')
    row.push(unmarked(value))
    at = stop
    if (body[at] === delimiter) {
      at++
      // A field may stand empty at the very end.
      if (at === body.length) row.push('')
      continue
    }
    at++
    end()
  }
  if (row.length > 0) end()
  return good(rows)
}
