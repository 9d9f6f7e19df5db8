import * as z from 'zod'
import { trialsSchema } from './exchange/bundle.ts'
import { trialSchema } from './schema.ts'

const published = (schema: z.ZodType, id: string): Record<string, unknown> => {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' })
  return { $schema, $id: id, ...rest }
}

/** The published JSON Schemas (draft 2020-12) of trial files, single and several in one. */
export const trialSchemas: Readonly<Record<string, () => Record<string, unknown>>> = {
  'trial.schema.json': () => published(trialSchema, 'urn:tinwright:trial:1'),
  'trials.schema.json': () => published(trialsSchema, 'urn:tinwright:trials:1'),
}
