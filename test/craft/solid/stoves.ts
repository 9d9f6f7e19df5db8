import { orThrow } from '#basis/problem.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import { exampleFiles, exampleStoves } from '../../cli/memory.ts'

/** The stoves of `examples/`. */
export const examples: readonly Stove[] = exampleStoves.map((name) =>
  orThrow(readStove(exampleFiles[name] as string)),
)

export const example = (name: string): Stove => {
  const stove = examples.find((one) => one.name === name)
  if (stove === undefined) throw new Error(`There is no example called ${name}.`)
  return stove
}
