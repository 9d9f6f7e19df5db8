import { readFileSync } from 'node:fs'
import { orThrow } from '#basis/problem.ts'
import { type BurnCase, type Firing, fire } from '#science/answers/run.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'

export const exampleNames = ['redshank', 'heron', 'greylag'] as const

export const example = (name: (typeof exampleNames)[number]): Stove =>
  orThrow(readStove(readFileSync(new URL(`../../../examples/${name}.stove.json`, import.meta.url), 'utf8')))

/** A stove laid out to be burnt; fails the test where it does not burn. */
export const firingOf = (stove: Stove, chosen: Partial<BurnCase> = {}): Firing => {
  const outcome = orThrow(fire(stove, chosen))
  if (outcome.kind === 'no burn') throw new Error(outcome.noBurn.sentence)
  return outcome.firing
}
