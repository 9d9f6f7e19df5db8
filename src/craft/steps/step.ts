import type { Metres } from '#basis/units.ts'
import type { Drawing } from '../drawing.ts'
import type { NamedOpening } from '../shop/making.ts'

/** Something to measure before going on. */
export interface StepCheck {
  readonly part: string
  readonly opening: string | null
  /** `intake: 21 mm (53/64 in) from the bottom edge to the hole centre, ± 1 mm (3/64 in).` */
  readonly sentence: string
  /** Null where it is not a length [m]. */
  readonly value: Metres | null
  readonly tolerance: Metres | null
}

/** One step of building, as data: each writer sets it where it has room. */
export interface BuildStep {
  /** A stable word for programs and file names: `drill shell`. */
  readonly key: string
  readonly title: string
  readonly sentences: readonly string[]
  readonly parts: readonly string[]
  /** Openings that are finished in this step. */
  readonly makes: readonly NamedOpening[]
  /** The part that this step puts in its place; null for none. */
  readonly places: string | null
  readonly tools: readonly string[]
  readonly checks: readonly StepCheck[]
  /** Those that belong to this step; a page of steps carries them all besides. */
  readonly cautions: readonly string[]
  readonly picture: Drawing
}
