import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const folder = fileURLToPath(new URL('../../../examples/', import.meta.url))

export interface Example {
  readonly name: string
  readonly text: string
}

/** The stove files of `examples/`. */
export const stoveExamples: readonly Example[] = readdirSync(folder)
  .filter((name) => name.endsWith('.stove.json'))
  .map((name) => ({ name, text: readFileSync(folder + name, 'utf8') }))

export const shelfExample: Example = { name: 'shelf.json', text: readFileSync(`${folder}shelf.json`, 'utf8') }

export const exampleNamed = (name: string): Example => {
  const found = stoveExamples.find((example) => example.name === `${name}.stove.json`)
  if (found === undefined) throw new Error(`No example ${name}`)
  return found
}
