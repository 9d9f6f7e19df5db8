import * as z from 'zod'
import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { whole } from '#proof/trial/whole.ts'
import { strict, words } from '#stove/document/fields.ts'
import { checkFormat } from '#stove/document/formatLine.ts'
import { readJson } from '#stove/document/json.ts'
import { schemaProblems } from '#stove/document/schemaProblems.ts'
import type { Mapping } from './mapping.ts'

const MOST_COLUMNS = 256
const column = () => whole(0, MOST_COLUMNS - 1, 'Which column, the first is 0.')
const order = z
  .enum(['year month day', 'day month year', 'month day year'])
  .meta({ description: 'In which order a date is written.' })
const clock = z
  .enum(['hours:minutes:seconds', 'hours:minutes', 'hours:minutes:seconds am/pm', 'hours:minutes am/pm'])
  .meta({ description: 'How the time of day is written.' })

const FORMS = [
  'elapsed',
  'elapsed clock',
  'time of day',
  'date and time',
  'date beside time',
  'seconds since 1970',
  'milliseconds since 1970',
] as const

const time = z
  .discriminatedUnion(
    'form',
    [
      strict({ form: z.literal('elapsed'), column: column(), unit: z.enum(['s', 'ms', 'min', 'h']) }),
      strict({
        form: z.literal('elapsed clock'),
        column: column(),
        clock: z.enum(['hours:minutes:seconds', 'minutes:seconds']),
      }),
      strict({ form: z.literal('time of day'), column: column(), clock }),
      strict({ form: z.literal('date and time'), column: column(), order, clock }),
      strict({ form: z.literal('date beside time'), date: column(), column: column(), order, clock }),
      strict({ form: z.literal('seconds since 1970'), column: column() }),
      strict({ form: z.literal('milliseconds since 1970'), column: column() }),
    ],
    { error: () => FORMS.join(', ') },
  )
  .meta({ description: 'What the time of a line is read from.' })

/** As it stands in a logger's file, whatever that is. */
const heading = (description: string) => z.string().max(1000).meta({ description })

const channel = z.discriminatedUnion(
  'quantity',
  [
    strict({
      column: column(),
      name: heading('What the channel is called.'),
      quantity: z.literal('temperature'),
      unit: z.enum(['°C', '°F', 'K']),
    }),
    strict({
      column: column(),
      name: heading('What the channel is called.'),
      quantity: z.literal('mass'),
      unit: z.enum(['g', 'kg', 'oz', 'lb']),
    }),
  ],
  { error: () => 'temperature, mass' },
)

export const mappingSchema = strict({
  $schema: words(200, 'Where an editor finds the JSON Schema of this file.').optional(),
  format: z.literal('tinwright/logger@1').meta({ description: 'Kind and version of this file.' }),
  delimiter: z.enum([',', ';', 'tab', '|', 'blanks']).meta({ description: 'What stands between fields.' }),
  decimal: z.enum(['.', ',']).meta({ description: 'What sets off decimals.' }),
  thousands: z
    .enum(['', ',', '.', ' ', "'"])
    .meta({ description: 'What stands before every three figures; empty for nothing.' }),
  skip: whole(0, 10_000, 'Lines above the first line of readings.'),
  width: whole(1, MOST_COLUMNS, 'Fields of a line.'),
  headings: z
    .array(heading('What stands over a column; empty for nothing.'))
    .max(MOST_COLUMNS)
    .meta({ description: 'One for each column: a file with other headings is told.' }),
  units: z
    .array(heading('What stands under the heading of a column; empty for nothing.'))
    .max(MOST_COLUMNS)
    .meta({ description: 'The line of units under the headings, likewise; all empty where there is none.' }),
  time,
  channels: z.array(channel).min(1).max(MOST_COLUMNS).meta({ description: 'Columns that are read.' }),
}).meta({ title: 'Tinwright logger mapping', description: 'How the files of one logger are read.' })

const MARK_FIX = 'Look at a line of the file: one mark cannot mean two things.'

/** What does not go together in a mapping whose fields are each right. */
const togetherProblems = (mapping: Mapping): readonly Problem[] => {
  const { decimal, thousands, delimiter, width, time: of, channels } = mapping
  const problem = (code: string, field: string, value: string, allowed: string, fix: string): Problem => ({
    code: `logger.${code}`,
    field,
    value,
    allowed,
    fix,
  })
  const taken = new Map<number, string>()
  const place = (at: number, field: string): readonly Problem[] => {
    if (at >= width)
      return [
        problem(
          'no-such-column',
          field,
          String(at),
          `a column from 0 to ${width - 1}, for a line has ${width} fields`,
          'Count the columns from 0, or mend "width".',
        ),
      ]
    const before = taken.get(at)
    taken.set(at, field)
    return before === undefined
      ? []
      : [
          problem(
            'column-twice',
            field,
            String(at),
            `a column that is not read as ${before} already`,
            'Take one of the two out, or mend its column.',
          ),
        ]
  }
  const rightLength = (key: 'headings' | 'units'): readonly Problem[] =>
    mapping[key].length === width
      ? []
      : [
          problem(
            'other-width',
            key,
            `${mapping[key].length} entries`,
            `${width}, one for each field of a line`,
            'Write "" for a column without one.',
          ),
        ]
  return [
    ...(decimal === thousands
      ? [problem('marks-clash', 'thousands', `"${thousands}"`, `anything but the decimal mark`, MARK_FIX)]
      : []),
    ...(delimiter === decimal
      ? [
          problem(
            'marks-clash',
            'decimal',
            `"${decimal}"`,
            'a mark that does not stand between fields',
            MARK_FIX,
          ),
        ]
      : []),
    ...(thousands !== '' && (delimiter === thousands || (delimiter === 'blanks' && thousands === ' '))
      ? [
          problem(
            'marks-clash',
            'thousands',
            `"${thousands}"`,
            'a mark that does not stand between fields',
            MARK_FIX,
          ),
        ]
      : []),
    ...rightLength('headings'),
    ...rightLength('units'),
    ...(of.form === 'date beside time' ? place(of.date, 'time.date') : []),
    ...place(of.column, 'time.column'),
    ...channels.flatMap((one, i) => place(one.column, `channels[${i}].column`)),
  ]
}

/** Reads a mapping that was kept. All problems of one stage are collected. */
export const readMapping = (text: string): Outcome<Mapping> => {
  const json = readJson(text)
  if (!json.ok) return json
  const format = checkFormat(json.value, 'tinwright/logger@1')
  if (!format.ok) return format
  const parsed = mappingSchema.safeParse(json.value)
  if (!parsed.success) return bad(...schemaProblems(parsed.error.issues, json.value))
  const { $schema: _, ...mapping } = parsed.data
  const problems = togetherProblems(mapping)
  return problems.length > 0 ? bad(...problems) : good(mapping)
}

export const mappingText = (mapping: Mapping): string => `${JSON.stringify(mapping, null, 2)}\n`
