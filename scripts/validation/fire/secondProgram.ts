import { readFileSync } from 'node:fs'
import twin from '#reference/steadyScipy.json' with { type: 'json' }
import { lowerHeatingValue, lowerHeatingValueAsFired } from '#science/fuel/composition.ts'
import { describeMoment } from '#science/steady/describe.ts'
import type { SteadyInput } from '#science/steady/input.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import type { CheckSet, PointRow } from '../row.ts'

interface SteadyCase extends SteadyInput {
  readonly name: string
  readonly position: number
}

/** Not imported: a stove of two hundred numbers has no type worth inferring. */
const cases = (): readonly SteadyCase[] =>
  JSON.parse(readFileSync(new URL('../../../test/reference/steadyCases.json', import.meta.url), 'utf8'))

/** What was asked of two programs that solve the same equations [1]. */
const AGREES = 1e-3

const solved = (given: SteadyCase) => {
  const { fuel, site, coefficients, position } = given
  const { moisture } = fuel
  const model = createSteadyModel(given)
  const outcome = model.solve(position)
  if (!outcome.ok) throw new Error(`${given.name}: ${outcome.failure.sentence}`)
  const lower = lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H)
  const asFired = lowerHeatingValueAsFired(lower, moisture)
  const { state } = outcome
  const moment = describeMoment({ plan: model.plan, state, position, moisture, site, asFired, coefficients })
  return { plan: model.plan, walls: [...state.wallTemperature], moment }
}

export const secondProgramSets: readonly CheckSet[] = [
  {
    title: 'the whole steady state by a second program, written anew from the equations',
    source: twin.source,
    standing: 'proof of code',
    note: '0.1 %. The two share equations and coefficients: what agrees is the working out, not the model. Its test compares the flow through every passage besides.',
    rows: () =>
      cases().flatMap((given): PointRow[] => {
        const theirs = twin.rows.find(({ name }) => name === given.name)
        if (theirs === undefined) throw new Error(`${given.name} is not in steadyScipy.json`)
        const { plan, walls, moment } = solved(given)
        const row = (what: string, published: number, ours: number, unit: string): PointRow => ({
          check: `${given.name}: ${what}`,
          group: given.name,
          published,
          ours,
          unit,
          allowed: { share: AGREES },
        })
        const { front, flame, outlet } = moment.temperature
        return [
          row('primary air', 1e6 * theirs.primaryAir, 1e6 * moment.air.primary, 'mg/s'),
          row('fuel', 1e6 * theirs.fuelRate, 1e6 * moment.fuelRate, 'mg/s'),
          row('firepower', theirs.firepower, moment.firepower, 'W'),
          row('front', theirs.frontTemperature, front, 'K'),
          row('flame', theirs.flameTemperature, flame, 'K'),
          row('outlet', theirs.outletTemperature, outlet, 'K'),
          ...theirs.walls.map((wall, s) =>
            row(`wall ${s + 1}, ${plan.walls[s]?.part}`, wall, walls[s] ?? Number.NaN, 'K'),
          ),
        ]
      }),
  },
]
