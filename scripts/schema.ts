import { writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { outputSchemas } from '#cli/schema/schemas.ts'
import { loggerSchemas } from '#proof/logger/jsonSchema.ts'
import { trialSchemas } from '#proof/trial/jsonSchema.ts'
import { jsonSchemas } from '#stove/document/jsonSchema.ts'
import { compact } from './compactLists.ts'

/** Writes the published JSON Schemas anew: `node scripts/schema.ts`. A test says when that is due. */
for (const [name, schema] of Object.entries({
  ...jsonSchemas,
  ...trialSchemas,
  ...loggerSchemas,
  ...outputSchemas,
})) {
  const path = fileURLToPath(new URL(`../schema/${name}`, import.meta.url))
  await writeFile(path, `${compact(JSON.stringify(schema(), null, 2))}\n`)
  console.log(path)
}
