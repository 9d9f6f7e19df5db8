import { writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { outputSchemas } from '#cli/schema/schemas.ts'
import { trialSchemas } from '#proof/trial/jsonSchema.ts'
import { jsonSchemas } from '#stove/document/jsonSchema.ts'

const LINE = 110
/** Short lists of words on one line, as the formatter of the house wants them. */
const compact = (json: string): string =>
  json.replace(/^(.*)\[\n((?:\s+"[^"\n]*",?\n)+)\s+\]/gm, (all, start: string, words: string) => {
    const list = words.trim().replace(/\s*\n\s*/g, ' ')
    const line = `${start}[${list}]`
    return line.length < LINE ? line : all
  })

/** Writes the published JSON Schemas anew: `node scripts/schema.ts`. A test says when that is due. */
for (const [name, schema] of Object.entries({ ...jsonSchemas, ...trialSchemas, ...outputSchemas })) {
  const path = fileURLToPath(new URL(`../schema/${name}`, import.meta.url))
  await writeFile(path, `${compact(JSON.stringify(schema(), null, 2))}\n`)
  console.log(path)
}
