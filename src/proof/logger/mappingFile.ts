import * as z from 'zod'
import { bad, good, type Outcome } from '#basis/problem.ts'
import { whole } from '#proof/trial/whole.ts'
import { strict } from '#stove/document/fields.ts'
import { checkFormat } from '#stove/document/formatLine.ts'
import { readJson } from '#stove/document/json.ts'
import { schemaProblems } from '#stove/document/schemaProblems.ts'
import type { Mapping } from './mapping.ts'

const MOST_COLUMNS = 256
const column = () => whole(0, MOST_COLUMNS - 1, 'Which column, the first is 0.')
const order = z.enum(['year month day', 'day month year', 'month day year'])

const time = z.discriminatedUnion(
  'form',
  [
    strict({ form: z.literal('elapsed'), column: column(), unit: z.enum(['s', 'ms', 'min', 'h']) }),
    strict({ form: z.literal('hours:minutes:seconds'), column: column() }),
    strict({ form: z.literal('minutes:seconds'), column: column() }),
    strict({ form: z.literal('hours:minutes'), column: column() }),
    strict({ form: z.literal('date and time'), column: column(), order }),
    strict({ form: z.literal('date, time'), date: column(), column: column(), order }),
    strict({ form: z.literal('seconds since 1970'), column: column() }),
    strict({ form: z.literal('milliseconds since 1970'), column: column() }),
  ],
  { error: () => 'elapsed, hours:minutes:seconds, minutes:seconds, hours:minutes, date and time' },
)

const channel = z.discriminatedUnion(
  'quantity',
  [
    strict({
      column: column(),
      name: z.string(),
      quantity: z.literal('temperature'),
      unit: z.enum(['°C', '°F', 'K']),
    }),
    strict({
      column: column(),
      name: z.string(),
      quantity: z.literal('mass'),
      unit: z.enum(['g', 'kg', 'oz', 'lb']),
    }),
  ],
  { error: () => 'temperature, mass' },
)

export const mappingSchema = strict({
  format: z.literal('tinwright/logger@1'),
  delimiter: z.enum([',', ';', '\t', '|', 'blanks']),
  decimal: z.enum(['.', ',']),
  thousands: z.enum(['', ',', '.', ' ', "'"]),
  skip: whole(0, 10_000, 'Lines above the first line of readings.'),
  width: whole(1, MOST_COLUMNS, 'Fields of a line.'),
  time,
  channels: z.array(channel).min(1).max(MOST_COLUMNS),
}).meta({ title: 'Tinwright logger mapping', description: 'How the files of one logger are read.' })

/** Reads a mapping that was kept. */
export const readMapping = (text: string): Outcome<Mapping> => {
  const json = readJson(text)
  if (!json.ok) return json
  const format = checkFormat(json.value, 'tinwright/logger@1')
  if (!format.ok) return format
  const parsed = mappingSchema.safeParse(json.value)
  if (!parsed.success) return bad(...schemaProblems(parsed.error.issues, json.value))
  const mapping = parsed.data as Mapping
  if (mapping.decimal === mapping.thousands || mapping.delimiter === mapping.decimal)
    return bad({
      code: 'logger.marks-clash',
      field: 'decimal',
      value: mapping.decimal,
      allowed: 'a mark that is neither between fields nor between thousands',
      fix: 'Look at a line of the file: one mark cannot mean two things.',
    })
  return good(mapping)
}

export const mappingText = (mapping: Mapping): string => `${JSON.stringify(mapping, null, 2)}\n`
