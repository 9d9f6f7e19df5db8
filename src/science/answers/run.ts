import { good, type Outcome } from '#basis/problem.ts'
import type { Degrees } from '#basis/units.ts'
import { type BurnOutcome, defaultBurnOptions, march } from '#science/burn/march.ts'
import { type Coefficients, medianCoefficients } from '#science/coefficients.ts'
import { planDraught } from '#science/draft/build.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { type ChargedFuel, fuelOf } from '#science/fuel/charge.ts'
import { lowerHeatingValue, lowerHeatingValueAsFired } from '#science/fuel/composition.ts'
import { mildDay, type Site } from '#science/site.ts'
import type { Stove } from '#stove/model.ts'

/** What a stove is burnt with and in. */
export interface BurnCase {
  readonly site: Site
  /** Overrides the stove file's, wet basis [1]. */
  readonly moisture: number | null
  /** The cans have been through a fire before. */
  readonly burntOff: boolean
  /** A second batch in a stove that is hot from the first. */
  readonly hot: boolean
  /** Damper turns: bearing of the band [deg] from a time after lighting [s]. */
  readonly damper: readonly { readonly at: number; readonly turned: number }[]
}

const plainCase: BurnCase = {
  site: mildDay,
  moisture: null,
  burntOff: true,
  hot: false,
  damper: [],
}

/** A stove ready to be burnt, over and over with other coefficients. */
export interface Firing {
  readonly fuel: ChargedFuel
  readonly plan: DraughtPlan
  /** As fired [kg] and [J/kg]. */
  readonly charge: number
  readonly lowerHeatingValue: number
  burn(coefficients?: Coefficients, keepMoments?: boolean): BurnOutcome
}

export type FiringOutcome =
  | { readonly kind: 'firing'; readonly firing: Firing }
  | { readonly kind: 'no burn'; readonly noBurn: { readonly code: string; readonly sentence: string } }

/** The same stove with its damper band turned to a bearing [deg]. */
export const withDamper = (stove: Stove, turned: number): Stove => ({
  ...stove,
  assembly: stove.assembly.map((placement) =>
    stove.parts.get(placement.part)?.role === 'damper'
      ? { ...placement, turned: turned as Degrees }
      : placement,
  ),
})

/** Lays everything out once; problems of the fuel come back as the maker's to mend. */
export const fire = (stove: Stove, chosen: Partial<BurnCase> = {}): Outcome<FiringOutcome> => {
  const { site, moisture: wetness, burntOff, hot, damper } = { ...plainCase, ...chosen }
  const found = fuelOf(stove, wetness)
  if (!found.ok) return found
  const fuel = found.value
  const planned = planDraught(stove)
  if (!planned.ok) return good({ kind: 'no burn', noBurn: planned.reason })
  const stages: { from: number; plan: DraughtPlan; sentence: string }[] = []
  for (const { at, turned } of damper) {
    const changed = planDraught(withDamper(stove, turned))
    if (!changed.ok) return good({ kind: 'no burn', noBurn: changed.reason })
    stages.push({ from: at, plan: changed.plan, sentence: `Damper turned to ${turned}°.` })
  }
  const { plan } = planned
  const input = { plan, fuel, site, burntOff }
  const burn = (coefficients: Coefficients = medianCoefficients, keepMoments = false): BurnOutcome => {
    const once = (wallStart: readonly number[] | null): BurnOutcome =>
      march({ ...input, coefficients }, { ...defaultBurnOptions, wallStart, stages, keepMoments })
    if (!hot) return once(null)
    const first = once(null)
    return first.burn.hotWalls === null ? first : once(first.burn.hotWalls)
  }
  return good({
    kind: 'firing',
    firing: {
      fuel,
      plan,
      charge: fuel.bulkDensity * plan.bed.area * plan.bed.depth,
      lowerHeatingValue: lowerHeatingValueAsFired(
        lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H),
        fuel.moisture,
      ),
      burn,
    },
  })
}
