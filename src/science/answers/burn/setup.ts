import type { CookingWish } from '#science/answers/figures.ts'
import type { Site } from '#science/site.ts'
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
