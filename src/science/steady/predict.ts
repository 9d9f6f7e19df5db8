import type { Outcome } from '#basis/problem.ts'
import { type Coefficients, medianCoefficients } from '#science/coefficients.ts'
import { planDraught } from '#science/draft/build.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { type ChargedFuel, fuelOf } from '#science/fuel/charge.ts'
import { lowerHeatingValue, lowerHeatingValueAsFired } from '#science/fuel/composition.ts'
import { mildDay, type Site } from '#science/site.ts'
import type { Stove } from '#stove/model.ts'
import { describeMoment } from './describe.ts'
import { createSteadyModel } from './model.ts'
import type { Moment, Prediction } from './prediction.ts'

export interface PredictOptions {
  readonly site?: Site
  readonly coefficients?: Coefficients
  /** The cans have been through a fire before (the usual case, and the default). */
  readonly burntOff?: boolean
  /** Overrides the stove file's moisture, wet basis [1]. */
  readonly moisture?: number
}

/** Why there is no steady burn to speak of. */
export interface NoBurn {
  readonly code: string
  readonly sentence: string
}

export type PredictionOutcome =
  | { readonly kind: 'prediction'; readonly prediction: Prediction }
  | { readonly kind: 'no burn'; readonly noBurn: NoBurn }

/** Places of the front at which the march over the bed is sampled: midpoints of five equal layers. */
const LAYERS = [0.1, 0.3, 0.5, 0.7, 0.9] as const

/**
 * Predicts the steady burn of a stove. Throws nothing: a stove that cannot burn comes back with the reason, a fuel
 * that is not known as a problem.
 */
export const predictSteady = (stove: Stove, options: PredictOptions = {}): Outcome<PredictionOutcome> => {
  const found = fuelOf(stove, options.moisture)
  if (!found.ok) return found
  const fuel = found.value
  const planned = planDraught(stove)
  if (!planned.ok) return { ok: true, value: { kind: 'no burn', noBurn: planned.reason } }
  return { ok: true, value: predictPlan(stove, planned.plan, fuel, options) }
}

const predictPlan = (
  stove: Stove,
  plan: DraughtPlan,
  fuel: ChargedFuel,
  options: PredictOptions,
): PredictionOutcome => {
  const site = options.site ?? mildDay
  const coefficients = options.coefficients ?? medianCoefficients
  const { moisture } = fuel
  const model = createSteadyModel({
    plan,
    fuel,
    site,
    coefficients,
    burntOff: options.burntOff ?? true,
  })
  const lowerDry = lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H)
  const asFired = lowerHeatingValueAsFired(lowerDry, moisture)
  const charge = fuel.bulkDensity * plan.bed.area * plan.bed.depth
  const dryCharge = charge * (1 - moisture)

  const moments: Moment[] = []
  let charLeft = 0
  let charEnergy = 0
  let stops: Prediction['stops'] = null
  for (const [layer, position] of LAYERS.entries()) {
    const outcome = model.solve(position)
    if (!outcome.ok) {
      // A front that has burnt its way down and then goes out is still a burn.
      if (layer === 0 || outcome.failure.code !== 'front out')
        return { kind: 'no burn', noBurn: outcome.failure }
      stops = { frontPosition: layer / LAYERS.length, sentence: outcome.failure.sentence }
      break
    }
    const { front } = outcome.state
    charLeft += (dryCharge / LAYERS.length) * front.char
    charEnergy += (dryCharge / LAYERS.length) * front.char * front.charHeat
    moments.push(
      describeMoment({
        plan: model.plan,
        state: outcome.state,
        position,
        moisture,
        site,
        asFired,
        coefficients,
      }),
    )
  }

  const layerMass = charge / LAYERS.length
  const duration = moments.reduce((sum, moment) => sum + layerMass / moment.fuelRate, 0)
  const heat = moments.reduce((sum, moment) => sum + (moment.firepower * layerMass) / moment.fuelRate, 0)
  const powers = moments.map((moment) => moment.firepower)
  return {
    kind: 'prediction',
    prediction: {
      stove: stove.name,
      fuel: {
        key: fuel.key,
        label: fuel.label,
        moisture,
        charge,
        lowerHeatingValue: asFired,
        bedArea: plan.bed.area,
        bedDepth: plan.bed.depth,
      },
      site,
      halfway: (moments[2] ?? moments[moments.length - 1]) as Moment,
      stops,
      woodGas: {
        duration,
        firepower: heat / duration,
        firepowerHighest: Math.max(...powers),
        firepowerLowest: Math.min(...powers),
        charLeft,
        charEnergyShare: charEnergy / (charge * asFired),
      },
    },
  }
}
