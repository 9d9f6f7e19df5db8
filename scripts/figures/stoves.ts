import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { orThrow } from '#basis/problem.ts'
import { type Firing, fire } from '#science/answers/run.ts'
import { type Coefficients, medianCoefficients } from '#science/coefficients.ts'
import { mildDay, type Site } from '#science/site.ts'
import { describeMoment } from '#science/steady/describe.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import type { Moment } from '#science/steady/prediction.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'

export type Example = 'redshank' | 'heron' | 'greylag'

// A stove file is whatever JSON it is until it is read.
// biome-ignore lint/suspicious/noExplicitAny: the reader checks every key and value of it.
type Json = any

/** An example stove, changed in its file before it is read. */
export const variant = (name: Example, change: (file: Json) => void = () => {}): Stove => {
  const path = join(import.meta.dirname, '..', '..', 'examples', `${name}.stove.json`)
  const file: Json = JSON.parse(readFileSync(path, 'utf8'))
  change(file)
  return orThrow(readStove(JSON.stringify(file)))
}

export const firingOf = (stove: Stove): Firing => {
  const outcome = orThrow(fire(stove))
  if (outcome.kind === 'no burn') throw new Error(outcome.noBurn.sentence)
  return outcome.firing
}

export interface Conditions {
  /** Of the front, 0 at the top of the fuel and 1 at its floor. */
  readonly position?: number
  readonly site?: Site
  readonly coefficients?: Coefficients
}

/** The steady burn at one place of the front; null where there is none. */
export const momentOf = (
  { plan, fuel, lowerHeatingValue }: Firing,
  { position = 0.5, site = mildDay, coefficients = medianCoefficients }: Conditions = {},
): Moment | null => {
  const model = createSteadyModel({ plan, fuel, site, coefficients, burntOff: true })
  const outcome = model.solve(position)
  if (!outcome.ok) return null
  return describeMoment({
    plan: model.plan,
    state: outcome.state,
    position,
    moisture: fuel.moisture,
    site,
    asFired: lowerHeatingValue,
    coefficients,
  })
}

/** Evenly spaced values, both ends included. */
export const steps = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1))

export const celsius = (kelvin: number): number => kelvin - 273.15
/** [mg/s] from [kg/s] */
export const milligrams = (flow: number): number => 1e6 * flow
