import type * as z from 'zod'
import { bad, good, type Outcome } from '#basis/problem.ts'
import type { Metres } from '#basis/units.ts'
import type { Bit, Can } from '#stove/model.ts'
import { length, strict } from './fields.ts'
import { formatted } from './format.ts'
import { type FuelRead, fuelSchema } from './fuelSchema.ts'
import type { JsonValue } from './json.ts'
import { schemaProblems } from './schemaProblems.ts'
import { readShelfValue, SHELF_FORMAT, type ShelfFile, shelfSchema } from './shelf.ts'

/** What lies on a shelf, each a document of its own: a can or a bit as it stands in a shelf file, a fuel as in a stove file. */
export type ShelfKind = 'can' | 'bit' | 'fuel' | 'pot'

export type CanItem = ShelfFile['cans'][string]

/** A fuel on the shelf: without the height it is filled to, which belongs to a stove. */
const fuelItemSchema = strict({
  kind: fuelSchema.shape.kind,
  own: fuelSchema.shape.own,
  moisture: fuelSchema.shape.moisture,
  fines: fuelSchema.shape.fines,
}).meta({ title: 'Tinwright fuel', description: 'A fuel a maker has.' })

const potItemSchema = strict({
  diameter: length('potDiameter'),
}).meta({ title: 'Tinwright pot', description: 'A pot a maker has: outside, across its bottom.' })

/** A place of the field inside the thing itself: `cans.bean can.height` is `height`. */
const inside = (field: string, name: string): string =>
  field.startsWith(`cans.${name}.`)
    ? field.slice(`cans.${name}.`.length)
    : field.replace(/^(?:cans|bits)(?:\.\d+)?\.?/, '')

const withField = <T>(outcome: Outcome<T>, name: string): Outcome<T> =>
  outcome.ok
    ? outcome
    : bad(...outcome.problems.map((problem) => ({ ...problem, field: inside(problem.field, name) })))

/** One can by its value in a shelf file [m]. */
export const readCanItem = (value: JsonValue, name: string): Outcome<Can> => {
  const read = readShelfValue({ format: SHELF_FORMAT, bits: [], cans: { [name]: value } })
  if (!read.ok) return withField(read, name)
  return good(read.value.cans.get(name) as Can)
}

/** A bit, or the steps of a step drill [m]. */
export const readBitItem = (value: JsonValue): Outcome<readonly Bit[]> => {
  const read = readShelfValue({ format: SHELF_FORMAT, bits: [value], cans: {} })
  return read.ok ? good(read.value.bits) : withField(read, '')
}

/** A fuel by what its maker knows of it. */
export const readFuelItem = (value: JsonValue): Outcome<Omit<FuelRead, 'level' | 'packing'>> => {
  // The stove file's own rules of what goes together hold, with a height that every can allows.
  const level = '50 mm'
  const shaped = fuelItemSchema.safeParse(value)
  if (!shaped.success) return bad(...schemaProblems(shaped.error.issues, value))
  const whole = fuelSchema.safeParse({ ...(value as object), level })
  if (!whole.success) return bad(...schemaProblems(whole.error.issues, value))
  const { level: _, packing: __, ...fuel } = whole.data
  return good(fuel)
}

/** A pot's outside diameter [m]. */
export const readPotItem = (value: JsonValue): Outcome<{ readonly diameter: Metres }> => {
  const read = potItemSchema.safeParse(value)
  return read.success ? good(read.data) : bad(...schemaProblems(read.error.issues, value))
}

/** What is wrong with a thing of the shelf; nothing: it reads. */
export const readShelfItem = (kind: ShelfKind, value: JsonValue, name: string): Outcome<unknown> => {
  switch (kind) {
    case 'can':
      return readCanItem(value, name)
    case 'bit':
      return readBitItem(value)
    case 'fuel':
      return readFuelItem(value)
    case 'pot':
      return readPotItem(value)
  }
}

const SCHEMAS: Readonly<Record<ShelfKind, z.core.$ZodType>> = {
  can: (shelfSchema.shape.cans as unknown as z.core.$ZodRecord)._zod.def.valueType,
  bit: shelfSchema.shape.bits.element,
  fuel: fuelItemSchema,
  pot: potItemSchema,
}

/** A thing of the shelf as text, written the same way however it came to be. */
export const formatShelfItem = (kind: ShelfKind, value: JsonValue): string => formatted(value, SCHEMAS[kind])
