import type { BurnSummary } from '#craft/section/airState.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import { layouts } from '../../science/layouts.ts'
import { stoveExamples } from '../../stove/document/examples.ts'

export interface Subject {
  readonly name: string
  readonly stove: Stove
  /** Null where the model finds no burn: the stove is drawn cold. */
  readonly burn: BurnSummary | null
}

const burnOf = (stove: Stove): BurnSummary | null => {
  const outcome = predictSteady(stove)
  return outcome.ok && outcome.value.kind === 'prediction' ? outcome.value.prediction : null
}

const examples = stoveExamples.map(({ name, text }): readonly [string, Stove] => {
  const read = readStove(text)
  if (!read.ok) throw new Error(`${name} does not read`)
  return [name, read.value]
})

/** Our examples and every layout of the trade, with what the model says of each. */
export const subjects: readonly Subject[] = [
  ...examples,
  ...Object.entries(layouts).map(([name, make]): readonly [string, Stove] => [name, make()]),
].map(([name, stove]) => ({ name, stove, burn: burnOf(stove) }))

export const burning = subjects.flatMap(({ name, stove, burn }) =>
  burn === null ? [] : [{ name, stove, burn }],
)

export const subject = (name: string): Subject => {
  const found = subjects.find((one) => one.name === name)
  if (found === undefined) throw new Error(`No subject ${name}`)
  return found
}
