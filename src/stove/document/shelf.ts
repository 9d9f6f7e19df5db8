import * as z from 'zod'
import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import type { Bit, Can, Shelf } from '#stove/model.ts'
import { canShape, endSchema, needsSize, SIZE_REQUIRED } from './canSchema.ts'
import { bit, strict, words } from './fields.ts'
import { checkFormat } from './formatLine.ts'
import { type JsonValue, readJson } from './json.ts'
import { named } from './names.ts'
import { within } from './place.ts'
import { readCan } from './readCan.ts'
import { schemaProblems } from './schemaProblems.ts'

export const SHELF_FORMAT = 'tinwright/shelf@1'

const stepDrill = strict({ step: z.array(bit()).min(1).max(40) }).meta({
  description: 'A step drill, by its steps.',
})

const shelfCan = needsSize({
  ...canShape,
  bottom: endSchema.optional(),
  top: endSchema.optional(),
}).meta({
  id: 'shelf-can',
  description: 'A can as it stands on the shelf; an end that is not given is whole.',
  anyOf: SIZE_REQUIRED,
})

/** The shelf file: the bits and cans a maker owns. */
export const shelfSchema = strict({
  $schema: words(200, 'Where an editor finds the JSON Schema of this file.').optional(),
  format: z.literal(SHELF_FORMAT).meta({ description: 'Kind and version of this file.' }),
  about: words(4000, 'Remarks.').optional(),
  bits: z
    .array(
      z.union([bit(), stepDrill], { error: () => 'a bit such as "6 mm", or { "step": ["4 mm", "6 mm"] }' }),
    )
    .max(500)
    .meta({ description: 'Drill bits by the names of the trade, and step drills by their steps.' }),
  cans: named(shelfCan, 500, 'Cans by your own names for them.'),
}).meta({ title: 'Tinwright shelf', description: 'Bits and cans a maker owns.' })

export type ShelfFile = z.input<typeof shelfSchema>

/** A step is named by the bit it belongs to, so that a plan says to take the step drill. */
const asStep = (one: Bit): Bit => (one.name.endsWith(' step') ? one : { ...one, name: `${one.name} step` })

const PLAIN = { end: 'plain' } as const

/** Reads a shelf file (`tinwright/shelf@1`) [m]. Problems as of `readStove`. */
export const readShelf = (text: string): Outcome<Shelf> => {
  const json = readJson(text)
  return json.ok ? readShelfValue(json.value) : json
}

/** The same of JSON that has been read already [m]. */
export const readShelfValue = (json: JsonValue): Outcome<Shelf> => {
  const format = checkFormat(json, SHELF_FORMAT)
  if (!format.ok) return format
  const parsed = shelfSchema.safeParse(json)
  if (!parsed.success) return bad(...schemaProblems(parsed.error.issues, json))
  const cans = new Map<string, Can>()
  const problems: Problem[] = []
  for (const [name, { bottom, top, ...measures }] of Object.entries(parsed.data.cans)) {
    const place = within({ file: json, path: [] }, 'cans', name)
    const can = readCan(measures, bottom ?? PLAIN, top ?? PLAIN, undefined, { measures: place, part: place })
    if (can.ok) cans.set(name, can.value)
    else problems.push(...can.problems)
  }
  if (problems.length > 0) return bad(...problems)
  const bits = parsed.data.bits.flatMap((one) => ('step' in one ? one.step.map(asStep) : [one]))
  return good({ bits, cans })
}
