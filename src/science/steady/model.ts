import type { DraughtPlan } from '#science/draft/plan.ts'
import { frontModel } from '#science/fire/front.ts'
import { rawFuelSource } from '#science/fire/source.ts'
import { placeFront } from './frontPlace.ts'
import type { SteadyInput } from './input.ts'
import { layOut } from './layOut.ts'
import { settle } from './settle.ts'
import type { SteadyOutcome } from './state.ts'

/**
 * The steady state of one stove at one place of the front: pressures, flows, temperatures, gas make and walls together.
 */
export interface SteadyModel {
  /** The plan as it is solved: rows parted where the wind differs. */
  readonly plan: DraughtPlan
  /** `frontPosition` is 0 at the top of the fuel and 1 at its floor. */
  solve(frontPosition: number): SteadyOutcome
}

/**
 * Lays a stove out for one fuel, site and set of coefficients, to be solved at any place of the front. What does not settle,
 * glow or draw comes back as a failure with a sentence.
 */
export const createSteadyModel = (input: SteadyInput): SteadyModel => {
  const w = layOut(input)
  const bedDiameter = 2 * Math.sqrt(input.plan.bed.area / Math.PI)
  const model = frontModel(
    input.fuel,
    input.fuel.moisture,
    input.site.temperature,
    input.coefficients,
    bedDiameter,
  )
  const source = rawFuelSource(model, input.fuel.moisture, input.coefficients)
  return {
    plan: w.plan,
    solve: (frontPosition) => settle(w, placeFront(w, frontPosition), source, { fresh: true }),
  }
}
