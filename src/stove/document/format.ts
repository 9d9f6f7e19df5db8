import type * as z from 'zod'
import type { JsonValue } from './json.ts'
import { type StoveFile, stoveSchema } from './schema.ts'
import { type ShelfFile, shelfSchema } from './shelf.ts'

/**
 * Writes documents so that a person can read them and a diff shows what was changed: keys in the
 * order of the schema, the maker's own names in the order they stand, small groups on one line.
 */
type Schema = z.core.$ZodType
type JsonObject = { readonly [key: string]: JsonValue }

const isObject = (value: JsonValue): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const unwrapped = (schema: Schema): z.core.$ZodTypes => {
  const known = schema as z.core.$ZodTypes
  return known._zod.def.type === 'optional'
    ? unwrapped((known as z.core.$ZodOptional)._zod.def.innerType)
    : known
}

/** Whether a value can be the one this branch of a union describes, by its keys and its fixed words. */
const suits = (value: JsonValue, branch: Schema): boolean => {
  const schema = unwrapped(branch)
  if (schema._zod.def.type !== 'object') return !isObject(value)
  if (!isObject(value)) return false
  const { shape } = (schema as z.core.$ZodObject)._zod.def
  return Object.entries(value).every(([key, entry]) => {
    const expected = shape[key]
    const words = expected === undefined ? undefined : unwrapped(expected)._zod.values
    return expected !== undefined && (words === undefined || words.has(entry as string))
  })
}

const ordered = (value: JsonValue, schema: Schema | undefined): JsonValue => {
  if (schema === undefined || typeof value !== 'object' || value === null) return value
  const known = unwrapped(schema)
  switch (known._zod.def.type) {
    case 'union':
      return ordered(
        value,
        (known as z.core.$ZodUnion)._zod.def.options.find((option) => suits(value, option)),
      )
    case 'array':
      return Array.isArray(value)
        ? value.map((one) => ordered(one, (known as z.core.$ZodArray)._zod.def.element))
        : value
    case 'record': {
      if (!isObject(value)) return value
      const { valueType } = (known as z.core.$ZodRecord)._zod.def
      return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, ordered(one, valueType)]))
    }
    case 'object': {
      if (!isObject(value)) return value
      const { shape } = (known as z.core.$ZodObject)._zod.def
      const keys = [...new Set([...Object.keys(shape), ...Object.keys(value)])]
      return Object.fromEntries(
        // An absent key and one that holds `undefined` are the same to JSON.
        keys.flatMap((key) => {
          const entry = value[key]
          return entry === undefined ? [] : [[key, ordered(entry, shape[key])] as const]
        }),
      )
    }
    default:
      return value
  }
}

/** As wide as the house writes its own JSON. */
const LINE = 110
/** More than this on one line and the eye loses its place. */
const MOST_ON_A_LINE = 5

const isPlain = (value: JsonValue): boolean => typeof value !== 'object' || value === null

/** How many things to take in; a list of plain words or numbers is one. */
const leaves = (value: JsonValue): number => {
  if (isPlain(value) || (Array.isArray(value) && value.every(isPlain))) return 1
  return Object.values<JsonValue>(value as JsonObject).reduce<number>((sum, one) => sum + leaves(one), 0)
}

const onOneLine = (value: JsonValue): string => {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`
  if (!isObject(value)) return JSON.stringify(value)
  const entries = Object.entries(value).map(([key, one]) => `${JSON.stringify(key)}: ${onOneLine(one)}`)
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`
}

/** `before` is the room the key takes on the line. */
const written = (value: JsonValue, indent: string, before: number): string => {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const line = onOneLine(value)
  const list = Array.isArray(value)
  const severalGroups =
    list && value.length > 1 && value.some((one) => typeof one === 'object' && one !== null)
  if (
    leaves(value) <= MOST_ON_A_LINE &&
    !severalGroups &&
    indent !== '' &&
    indent.length + before + line.length <= LINE
  )
    return line
  const inner = `${indent}  `
  const rows = list
    ? value.map((one) => inner + written(one, inner, 1))
    : Object.entries(value as JsonObject).map(([key, one]) => {
        const start = `${JSON.stringify(key)}: `
        return inner + start + written(one, inner, start.length + 1)
      })
  const [open, close] = list ? '[]' : '{}'
  return rows.length === 0 ? `${open}${close}` : `${open}\n${rows.join(',\n')}\n${indent}${close}`
}

/** A document as text, its keys in the order of its schema. */
export const formatted = (value: JsonValue, schema: Schema): string =>
  `${written(ordered(value, schema), '', 0)}\n`

/** A stove file as text. Reading it back gives the same document; writing it again, the same text. */
export const formatStoveFile = (file: StoveFile): string =>
  formatted(file as unknown as JsonValue, stoveSchema)

/** A shelf file as text, likewise. */
export const formatShelfFile = (file: ShelfFile): string =>
  formatted(file as unknown as JsonValue, shelfSchema)
