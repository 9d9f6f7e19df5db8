import * as z from 'zod'
import { trialSchema } from './schema.ts'

/** The published JSON Schema (draft 2020-12) of trial files. */
export const trialSchemas: Readonly<Record<string, () => Record<string, unknown>>> = {
  'trial.schema.json': () => {
    const { $schema, ...rest } = z.toJSONSchema(trialSchema, { io: 'input', target: 'draft-2020-12' })
    return { $schema, $id: 'urn:tinwright:trial:1', ...rest }
  },
}
