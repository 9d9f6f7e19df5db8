import * as z from 'zod'
import { builtSchema } from '#stove/built/schema.ts'
import { stoveSchema } from './schema.ts'
import { shelfSchema } from './shelf.ts'

/** The published JSON Schemas (draft 2020-12), for editors and for other programs. */
const published = (schema: z.ZodType, id: string): Record<string, unknown> => {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' })
  return { $schema, $id: id, ...rest }
}

export const jsonSchemas: Readonly<Record<string, () => Record<string, unknown>>> = {
  'stove.schema.json': () => published(stoveSchema, 'urn:tinwright:stove:1'),
  'built.schema.json': () => published(builtSchema, 'urn:tinwright:built:1'),
  'shelf.schema.json': () => published(shelfSchema, 'urn:tinwright:shelf:1'),
}
