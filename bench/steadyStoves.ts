import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { orThrow } from '#basis/problem.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { planDraught } from '#science/draft/build.ts'
import { fuelOf } from '#science/fuel/charge.ts'
import { mildDay } from '#science/site.ts'
import type { SteadyInput } from '#science/steady/input.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import type { Stove } from '#stove/model.ts'
import { can, canPart, floorHoles, open, plain, row, twoWall } from '../test/science/stoves.ts'

export const REFERENCE = join(import.meta.dirname, '..', 'test', 'reference')

/** Three examples, laid out as SciPy gets them (test/reference/generators/exportSteadyCases.ts). */
export const EXAMPLES = ['redshank, half way', 'heron, half way', 'greylag, half way'] as const

export const exampleInput = (name: string): SteadyInput => {
  const cases: readonly (SteadyInput & { readonly name: string })[] = JSON.parse(
    readFileSync(join(REFERENCE, 'steadyCases.json'), 'utf8'),
  )
  const found = cases.find((one) => one.name === name)
  if (found === undefined) throw new Error(`no stove of steadyCases.json is called ${name}`)
  return found
}

/** What a steady state of a stove on a mild day depends on. */
export const inputOf = (stove: Stove): SteadyInput => {
  const outcome = planDraught(stove)
  if (!outcome.ok) throw new Error(outcome.reason.sentence)
  return {
    plan: outcome.plan,
    fuel: orThrow(fuelOf(stove)),
    site: mildDay,
    coefficients: medianCoefficients,
    burntOff: true,
  }
}

/** Places of the front, the same as SciPy's, so that no solve finds its answer ready. */
export const PLACES = Array.from({ length: 20 }, (_, i) => 0.05 + (0.9 * (i + 0.5)) / 20)

const solved = (model: ReturnType<typeof createSteadyModel>, place: number): number => {
  const found = model.solve(place)
  if (!found.ok) throw new Error(found.failure.sentence)
  return found.state.primaryAir
}

/** Finds the steady state for every place of the front, each from nothing; returns the air's sum. */
export const settleAll = (input: SteadyInput): (() => number) => {
  const model = createSteadyModel(input)
  return () => PLACES.reduce((sum, place) => sum + solved(model, place), 0)
}

/** Finds it for one place after the other. */
export const settleNext = (input: SteadyInput): (() => number) => {
  const model = createSteadyModel(input)
  let turn = 0
  return () => solved(model, PLACES[turn++ % PLACES.length] as number)
}

/** The two-wall stove of the tests, its secondary holes parted among some rows with the same area in all. */
export const withSecondaryRows = (rows: number): Stove => {
  const stove = twoWall()
  const secondary = Object.fromEntries(
    Array.from({ length: rows }, (_, i) => [
      `secondary ${i + 1}`,
      row('secondary', 20, 6 / Math.sqrt(rows), 104 - 6 * i),
    ]),
  )
  const fuelCan = canPart('fuel can', can(90.5, 118, plain, open, 93.5), {
    floor: floorHoles(37, 4, 38),
    ...secondary,
  })
  return { ...stove, parts: new Map([...stove.parts, ['fuel can', fuelCan]]) }
}
