import type { Coefficients } from '#science/coefficients.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import type { ChargedFuel } from '#science/fuel/charge.ts'
import type { Site } from '#science/site.ts'

/** What a steady state is asked for. */
export interface SteadyInput {
  readonly plan: DraughtPlan
  /** As it lies in the fuel can. */
  readonly fuel: ChargedFuel
  readonly site: Site
  readonly coefficients: Coefficients
  /** The cans have been through a fire: their tin has run off and the steel is dark. */
  readonly burntOff: boolean
}
