import type { Metres } from '#basis/units.ts'
import type { WhichEnd } from '#stove/can/ends.ts'

/**
 * How the first goes with the second.
 * - `drops in`: goes in by itself, with generous play.
 * - `slides in`: goes in with little play.
 * - `snaps on the lip`: a seam is a little wider than the opening and can be pressed past it, either way round.
 * - `sits on the rim`: wider than the opening; stands on it, or hangs in it by its seam.
 * - `goes over the outside`: the second goes into the first.
 * - `does not go`: closed against each other, or bare edge against bare edge.
 */
export type FitKind =
  | 'drops in'
  | 'slides in'
  | 'snaps on the lip'
  | 'sits on the rim'
  | 'goes over the outside'
  | 'does not go'

/** Play on the diameter; below nothing, how much too wide [m]. */
export interface Clearance {
  readonly nominal: Metres
  /** With both at the worst end of their tolerance. */
  readonly least: Metres
  readonly most: Metres
}

export interface Fit {
  /** With both as measured. */
  readonly kind: FitKind
  /** With both at the end of their tolerance that makes it tightest. */
  readonly atTightest: FitKind
  readonly atLoosest: FitKind
  /** Whether the kind holds over the whole of both tolerances. */
  readonly certain: boolean
  /** Opening less what goes through it; null where nothing is open. */
  readonly clearance: Clearance | null
  /** Which end of the outer of the two it goes through, as that can stands. */
  readonly through: WhichEnd | null
  readonly sentence: string
}
