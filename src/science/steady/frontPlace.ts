import type { Front } from '#science/fire/front.ts'
import type { SteadyInput } from './input.ts'

/** Where the front stands and what it makes, for one round of the iteration. */
export interface FrontPlace {
  /** Of the front above the bed's base [m]. */
  readonly height: number
  /** The bed link that turns air to gas. */
  readonly link: number
  readonly segment: number
  /** Of what comes to it: share that is air, not gas burnt before [1], and its temperature [K]. */
  airShare: number
  airTemperature: number
  /** Share of the bed's area that glows: below 1 while the fire spreads; the other air passes by [1]. */
  readonly active: number
  /** Char still there over the char the front left [1]. */
  readonly charLeft: number
}

/** Mass that leaves the front's stretch of the bed for each kilogram that enters it [kg/kg]. */
export const gainOf = ({ airShare, active }: FrontPlace, front: Front): number =>
  1 + (airShare * active * (front.gas - front.airPerFuel)) / front.airPerFuel

/** The place of a front; `position` is 0 at the top of the fuel, 1 at its floor. */
export const placeFront = (
  { plan: { bed }, site }: Pick<SteadyInput, 'plan' | 'site'>,
  position: number,
  active = 1,
  charLeft = 1,
): FrontPlace => {
  const height = (1 - position) * bed.depth
  const found = bed.segments.findIndex((s) => height >= s.from && height <= s.to)
  const segment = found < 0 ? bed.segments.length - 1 : found
  return {
    height,
    segment,
    link: bed.segments[segment]?.link ?? 0,
    airShare: 1,
    airTemperature: site.temperature,
    active,
    charLeft,
  }
}
