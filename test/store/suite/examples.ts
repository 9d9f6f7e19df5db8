import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { fileURLToPath } from 'node:url'

export const EXAMPLES = fileURLToPath(new URL('../../../examples/', import.meta.url))

/** A file in `examples/`, under its own name. */
export const example = (path: string) => ({
  name: basename(path),
  text: readFileSync(EXAMPLES + path, 'utf8'),
})
