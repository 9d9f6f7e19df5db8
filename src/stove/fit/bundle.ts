import type { CubicMetres, Kilograms, Metres } from '#basis/units.ts'

/** One thing to do, in order, to make the bundle. */
export interface BundleStep {
  readonly part: string
  readonly wayUp: 'as it stands' | 'upside down'
  /** Its lowest point above the ground [m]. */
  readonly base: Metres
  /** The part round it that holds it, or null. */
  readonly inside: string | null
  /** What it comes to rest on; null for the ground. */
  readonly restsOn: string | null
}

export interface BandPlace {
  readonly band: string
  readonly where: 'round' | 'inside' | 'alone'
  /** Null where it is alone. */
  readonly can: string | null
}

/** A part that moves more than it should. */
export interface Rattle {
  readonly part: string
  /** On the diameter inside what holds it; null where nothing holds it [m]. */
  readonly sideways: Metres | null
  /** Along the axis, in a bundle held at both ends [m]. */
  readonly lengthways: Metres
  readonly sentence: string
  readonly fix: string
}

/** A stove packed as small as it goes. */
export interface Bundle {
  readonly steps: readonly BundleStep[]
  /** Where each band is: clasped round or curled inside a can, or a step of its own. */
  readonly bands: readonly BandPlace[]
  /** Of the round bag it fits in. */
  readonly diameter: Metres
  readonly height: Metres
  readonly volume: CubicMetres
  readonly mass: Kilograms
  readonly rattles: readonly Rattle[]
  /** The steps, said for people. */
  readonly sentences: readonly string[]
}
