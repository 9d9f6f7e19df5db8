import { type CookingWish, usualWish } from '#science/answers/figures.ts'
import { mildDay, type Site } from '#science/site.ts'
import type { Stove } from '#stove/model.ts'

export interface DamperTurn {
  /** After lighting [s], or when one litre boils. */
  readonly at: number | 'boil'
  /** Bearing of the band's front mark [deg]. */
  readonly turned: number
}

export interface Trip {
  readonly days: number
  readonly boilsADay: number
  readonly litresABoil: number
}

/** A burn as asked for: a stove, what it is lit in, and what is done with it. SI units. */
export interface BurnSetup {
  readonly stove: Stove
  readonly site: Site
  /** Wet basis; null: as the file says [1]. */
  readonly moisture: number | null
  readonly burntOff: boolean
  readonly hot: boolean
  readonly turns: readonly DamperTurn[]
  readonly wish: CookingWish
  readonly trip: Trip | null
}

/** As the stove file says, on a mild day, in cans that have been through a fire, under a pot with its lid on. */
export const plainSetup = (stove: Stove): BurnSetup => ({
  stove,
  site: mildDay,
  moisture: null,
  burntOff: true,
  hot: false,
  turns: [],
  wish: { ...usualWish, potDiameter: stove.potDiameter ?? usualWish.potDiameter },
  trip: null,
})
