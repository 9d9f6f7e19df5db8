import { bad, good, type Outcome } from '#basis/problem.ts'
import { fieldsOf, linesOf } from '#proof/logger/table.ts'
import { EVENT_KINDS, type EventKind, WEIGHED, type WeighingFile } from '#proof/trial/logSchema.ts'
import { type BurnLog, type Entry, isWeighing, litAt, standing } from '../atStove/entry.ts'

const COLUMNS = ['id', 'at', 'after lighting (s)', 'what', 'value', 'text', 'edit'] as const

const quoted = (field: string): string =>
  /[",\n\r]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field

/** One event or weighing, `pot on` or `weighed pot`. */
const whatOf = (entry: Entry): string => (isWeighing(entry) ? `weighed ${entry.of}` : entry.event)

const valueIn = (entry: Entry): string =>
  isWeighing(entry) ? entry.mass : (entry.turned ?? entry.weight ?? '')

/** The log as a table, for a spreadsheet (RFC 4180); what was taken back is left out. */
export const logCsv = (log: BurnLog): string => {
  const lit = litAt(log)
  const rows = standing(log).map((entry) => [
    entry.id,
    entry.at,
    lit === null ? '' : String(Math.round((Date.parse(entry.at) - lit) / 100) / 10),
    whatOf(entry),
    valueIn(entry),
    entry.text ?? '',
    String(entry.edit ?? 0),
  ])
  return [COLUMNS, ...rows]
    .map((row) => row.map(quoted).join(','))
    .join('\r\n')
    .concat('\r\n')
}

const entryIn = (what: string, value: string): Partial<Entry> | null => {
  const of = WEIGHED.find((one) => what === `weighed ${one}`)
  if (of !== undefined) return { of, mass: value } satisfies Partial<WeighingFile>
  const event = EVENT_KINDS.find((kind): kind is EventKind => kind === what)
  if (event === undefined) return null
  if (event === 'damper to') return { event, turned: value }
  return event === 'refuel' ? { event, weight: value } : { event }
}

/** Reads such a table back. Problems name the line. */
export const readLogCsv = (text: string): Outcome<readonly Entry[]> => {
  const [head, ...lines] = linesOf(text)
  const columns = fieldsOf(head ?? '', ',')
  const missing = COLUMNS.filter((column) => !columns.includes(column) && column !== 'after lighting (s)')
  if (missing.length > 0)
    return bad({
      code: 'log.columns',
      field: 'line 1',
      value: head ?? 'an empty file',
      allowed: COLUMNS.join(','),
      fix: 'Take a table that was taken out of a trial here; a logger’s file goes into the logger’s place.',
    })
  const entries: Entry[] = []
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '') continue
    const fields = fieldsOf(line, ',')
    const field = (name: (typeof COLUMNS)[number]): string => fields[columns.indexOf(name)] ?? ''
    const said = entryIn(field('what'), field('value'))
    if (said === null || field('id') === '' || Number.isNaN(Date.parse(field('at'))))
      return bad({
        code: 'log.line',
        field: `line ${i + 2}`,
        value: line.slice(0, 80),
        allowed: 'an id, a time with its zone, and an event such as boil or weighed pot',
        fix: 'Mend the line, or take it out.',
      })
    const edit = Number(field('edit'))
    entries.push({
      id: field('id'),
      at: field('at'),
      ...said,
      ...(field('text') === '' ? {} : { text: field('text') }),
      ...(edit > 0 ? { edit } : {}),
    } as Entry)
  }
  return good(entries)
}
