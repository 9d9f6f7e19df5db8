import { shown } from '#basis/text/fault.ts'
import { labelled, wrap } from '#compose/page/text.ts'
import type { Mapping, Question, TimeMapping } from '#proof/logger/mapping.ts'

const BETWEEN: Readonly<Record<Mapping['delimiter'], string>> = {
  ',': 'commas',
  ';': 'semicolons',
  tab: 'tabs',
  '|': 'upright strokes',
  blanks: 'blanks',
}

const THOUSANDS: Readonly<Record<Mapping['thousands'], string>> = {
  '': 'nothing between thousands',
  ',': 'a comma between thousands',
  '.': 'a point between thousands',
  ' ': 'a blank between thousands',
  "'": 'an apostrophe between thousands',
}

const UNITS = { s: 'seconds', ms: 'milliseconds', min: 'minutes', h: 'hours' } as const

const place = (column: number): string => `column ${column + 1}`

const timeText = (time: TimeMapping): string => {
  switch (time.form) {
    case 'elapsed':
      return `${place(time.column)}, counted in ${UNITS[time.unit]}`
    case 'elapsed clock':
      return `${place(time.column)}, ${time.clock} since the start`
    case 'time of day':
      return `${place(time.column)}, time of day, ${time.clock}`
    case 'date and time':
      return `${place(time.column)}, date (${time.order}) and time of day, ${time.clock}`
    case 'date beside time':
      return `date (${time.order}) in ${place(time.date)}, time of day in ${place(time.column)}, ${time.clock}`
    default:
      return `${place(time.column)}, ${time.form}`
  }
}

const taken = ({ time, channels }: Mapping): ReadonlySet<number> =>
  new Set([
    time.column,
    ...(time.form === 'date beside time' ? [time.date] : []),
    ...channels.map(({ column }) => column),
  ])

/** Columns that nothing is read from: nobody shall think that they were. */
const leftOut = (mapping: Mapping): string => {
  const used = taken(mapping)
  return Array.from({ length: mapping.width }, (_, column) => column)
    .filter((column) => !used.has(column))
    .map((column) => {
      const heading = mapping.headings[column] ?? ''
      return heading === '' ? place(column) : `${place(column)} “${shown(heading)}”`
    })
    .join(', ')
}

/** How the file is read, in words. */
export const mappingBlock = (mapping: Mapping, title: string, width: number): string => {
  const { delimiter, decimal, thousands, skip, channels } = mapping
  const out = leftOut(mapping)
  const rows: readonly (readonly [string, string])[] = [
    [
      'lines',
      `${skip === 0 ? 'readings from the first on' : `readings below line ${skip}`}, fields apart by ${BETWEEN[delimiter]}`,
    ],
    ['numbers', `decimal ${decimal === ',' ? 'comma' : 'point'}, ${THOUSANDS[thousands]}`],
    ['time', timeText(mapping.time)],
    ...channels.map(({ column, name, quantity, unit }): readonly [string, string] => [
      quantity === 'mass' ? 'weight' : 'temperature',
      `${place(column)} “${shown(name)}” in ${unit}`,
    ]),
    ...(out === '' ? [] : [['not read', out] as const]),
  ]
  return [wrap(title, width), labelled(rows, width)].join('\n')
}

/** What the file does not tell, and the option that answers it. */
export const questionsBlock = (questions: readonly Question[], width: number): string =>
  [
    wrap(
      questions.length === 1
        ? 'One thing the file does not tell, and nothing is guessed:'
        : 'Some things the file does not tell, and nothing is guessed:',
      width,
    ),
    ...questions.map(({ key, ask, seen, choices }) =>
      [
        wrap(shown(ask), width, '  ', '  '),
        wrap(`It says: ${shown(seen)}`, width, '    ', '      '),
        ...choices.map((choice) => `    → --answer "${key}=${choice}"`),
      ].join('\n'),
    ),
  ].join('\n\n')
