import type { Coefficients } from '#science/coefficients.ts'
import type { Site } from '#science/site.ts'
import { SMOULDER_FLUX } from '#science/steady/describe.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import type { Firing } from './run.ts'

/** How much wind a stove stands, and from where it minds it most. */
export interface WindAnswer {
  /** Highest wind at the stove's height at which the front still gets air from every side that was tried [m/s]. */
  readonly stands: number
  /** Bearing of the wind that put it out first, from the front mark [deg]; null when none did up to `tried`. */
  readonly worstFrom: number | null
  /** Highest wind tried [m/s]. */
  readonly tried: number
}

const BEARINGS = [0, 45, 90, 135, 180, 225, 270, 315] as const
const STRONGEST = 8
/** Known to this [m/s]. */
const FINENESS = 0.25

/** Does the front get more air than it needs to do better than smoulder, half way down? */
const burns = (firing: Firing, site: Site, coefficients: Coefficients): boolean => {
  const { plan, fuel } = firing
  const outcome = createSteadyModel({ plan, fuel, site, coefficients, burntOff: true }).solve(0.5)
  return outcome.ok && outcome.state.primaryAir / plan.bed.area >= SMOULDER_FLUX
}

/** Raises the wind from eight sides until the front smoulders or goes out. Null for a stove that smoulders in calm air. */
export const windStood = (firing: Firing, site: Site, coefficients: Coefficients): WindAnswer | null => {
  const at = (speed: number, from: number): boolean =>
    burns(firing, { ...site, wind: { speed, from } }, coefficients)
  if (!at(0, 0)) return null
  let stands: number = STRONGEST
  let worstFrom: number | null = null
  for (const from of BEARINGS) {
    if (at(stands, from)) continue
    let low = 0
    let high = stands
    while (high - low > FINENESS) {
      const middle = (low + high) / 2
      if (at(middle, from)) low = middle
      else high = middle
    }
    stands = low
    worstFrom = from
  }
  return { stands, worstFrom, tried: STRONGEST }
}
