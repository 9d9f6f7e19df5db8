import * as z from 'zod'
import { mappingSchema } from './mappingFile.ts'

/** The published JSON Schema (draft 2020-12) of the mapping that is kept for a logger. */
export const loggerSchemas: Readonly<Record<string, () => Record<string, unknown>>> = {
  'logMapping.schema.json': () => {
    const { $schema, ...rest } = z.toJSONSchema(mappingSchema, { io: 'input', target: 'draft-2020-12' })
    return { $schema, $id: 'urn:tinwright:logger:1', ...rest }
  },
}
