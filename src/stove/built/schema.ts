import * as z from 'zod'
import { good, type Outcome } from '#basis/problem.ts'
import { type QuantityKey, quantity } from '#basis/quantities.ts'
import { readLength } from '#basis/text/length.ts'
import { allowedRange } from '#basis/text/range.ts'
import { readQuantity } from '#basis/text/read.ts'
import { field, readBareCount, strict, count as wholeNumber, words } from '#stove/document/fields.ts'
import { named } from '#stove/document/names.ts'

export const BUILT_FORMAT = 'tinwright/built@1'

/** As many as a stove file takes. */
const MOST_PARTS = 16
const MOST_OPENINGS = 24

const described = (key: QuantityKey, more: string): string =>
  `${quantity(key).description} ${more}: ${allowedRange(quantity(key))}; null while it is not measured.`

/** A measure, or null for a blank that nobody has filled in. */
const orBlank = <T>(
  read: (value: unknown) => Outcome<T>,
  type: 'string' | 'integer',
  description: string,
): z.ZodType<T | null, string | number | null> =>
  field<T | null, string | number | null>((value) => (value === null ? good(null) : read(value)), {
    type: [type, 'null'],
    description,
  })

const length = (key: QuantityKey) =>
  orBlank<number>(
    (value) => readLength(value, '', key),
    'string',
    described(key, 'Text with its unit, such as "16 mm", "5/8 in" or "5/8 in (16 mm)"'),
  )

const amount = (key: QuantityKey, example: string) =>
  orBlank<number>(
    (value) => readQuantity(value, '', key),
    'string',
    described(key, `Text with its unit, such as "${example}"`),
  )

const count = (key: QuantityKey) =>
  orBlank<number>((value) => readBareCount(value, key), 'integer', described(key, 'A whole number'))

/** Of a drilled hole or of a bore: a bore may be wider than any bit, a hole finer than any bore. */
const roundDiameter = orBlank<number>(
  (value) => {
    const hole = readLength(value, '', 'holeDiameter')
    const bore = readLength(value, '', 'boreDiameter')
    return hole.ok || !bore.ok ? hole : bore
  },
  'string',
  described('boreDiameter', 'Or of any hole. Text with its unit, such as "12.1 mm" or "5/8 in (16 mm)"'),
)

/** Readings of one length at several places, a blank for each that is still to be taken. */
const readings = (key: QuantityKey, most: number, where: string) => readingsOf(length(key), most, where)

const readingsOf = (reading: ReturnType<typeof length>, most: number, where: string) =>
  z.array(reading).min(1).max(most).optional().meta({ description: where })

const TWO_WAYS = 'Two readings at right angles to each other, or one.'

const plan = words(200, 'What the plan says, for the eye: nothing is read from it.').optional()

const openingSchema = strict({
  plan,
  count: count('patternCount').optional(),
  leftOut: z
    .array(wholeNumber('position'))
    .max(400)
    .optional()
    .meta({ description: 'Places of the row that were not cut, counted clockwise from 1; [] for none.' }),
  diameter: readingsOf(roundDiameter, 8, `${TWO_WAYS} Of a middling hole.`),
  window: strict({
    width: readings('windowWidth', 8, 'Width of a few windows.'),
    height: readings('windowHeight', 8, 'Height of a few windows.'),
  }).optional(),
  slit: strict({
    length: readings('slitLength', 8, 'Length of a few slits.'),
    width: readings('slitWidth', 8, 'Width of a few slits.'),
  }).optional(),
  height: length('holeHeight').optional(),
  from: z.enum(['bottom', 'top']).optional().meta({
    description: 'Edge of the part, as it stands, that the height was measured from. Bottom if left out.',
  }),
  bearing: amount('bearing', '2 deg').optional(),
  angle: amount('vaneAngle', '30 deg').optional(),
}).meta({ id: 'built-opening', description: 'One row, pattern, bore or ring of vanes, as it came out.' })

const partSchema = strict({
  plan,
  seamDiameter: readings('canSeamDiameter', 8, `${TWO_WAYS} Over the seam.`),
  bodyDiameter: readings('canBodyDiameter', 8, `${TWO_WAYS} Of the plain wall, outside.`),
  topBodyDiameter: readings(
    'canBodyDiameter',
    8,
    `${TWO_WAYS} Of a can that tapers, at its top edge; "bodyDiameter" is then that at its bottom edge.`,
  ),
  diameter: readings('discDiameter', 8, `${TWO_WAYS} Of a disc.`),
  height: length('canHeight').optional(),
  raised: length('raised').optional(),
  gap: readings('clearance', 8, 'Room to the wall round it: at the front, left, back and right.'),
  weight: amount('mass', '85 g').optional(),
  openings: named(openingSchema, MOST_OPENINGS, 'Openings by the names of the stove file.').optional(),
}).meta({ id: 'built-part', description: 'One part, as it came out.' })

/** The as-built file: what a maker measured on the finished stove. Every field but the first two may be left out. */
export const builtSchema = strict({
  $schema: words(200, 'Where an editor finds the JSON Schema of this file.').optional(),
  format: z.literal(BUILT_FORMAT).meta({ description: 'Kind and version of this file.' }),
  stove: words(80, 'Name of the stove, as its stove file has it.'),
  about: words(4000, 'Remarks: who measured, when, with what.').optional(),
  confirmed: z.array(words(200, 'A field of this file, as the question names it.')).max(200).optional().meta({
    description: 'Fields that are far off the plan and were measured twice.',
  }),
  parts: named(partSchema, MOST_PARTS, 'Parts by the names of the stove file.').optional(),
  fuel: strict({
    plan,
    level: length('fuelLevel').optional(),
    weight: amount('fuelWeight', '190 g').optional(),
    moisture: amount('fuelMoisture', '12 %').optional(),
  })
    .optional()
    .meta({ description: 'One filling, as it is burnt.' }),
  weight: amount('mass', '310 g').optional(),
}).meta({ title: 'Tinwright as-built sheet', description: 'What was measured on a stove when it was built.' })

/** An as-built file as its maker writes it. */
export type BuiltFile = z.input<typeof builtSchema>
export type BuiltRead = z.output<typeof builtSchema>
