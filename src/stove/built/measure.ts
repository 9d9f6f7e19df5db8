import type { QuantityKey } from '#basis/quantities.ts'

/** What a measure is of: decides how near the plan it should lie and where it goes in the stove file. */
export type MeasureKind =
  | 'seam diameter'
  | 'body diameter'
  | 'top body diameter'
  | 'can height'
  | 'disc diameter'
  | 'band height'
  | 'raised'
  | 'wall gap'
  | 'part weight'
  | 'row count'
  | 'pattern count'
  | 'vane count'
  | 'hole diameter'
  | 'bore diameter'
  | 'window width'
  | 'window height'
  | 'slit length'
  | 'slit width'
  | 'opening height'
  | 'first bearing'
  | 'vane angle'
  | 'fuel level'
  | 'fuel weight'
  | 'fuel moisture'
  | 'stove weight'

/** One line of the as-built sheet. */
export interface Measure {
  readonly kind: MeasureKind
  /** Where it stands in the as-built file. */
  readonly path: readonly string[]
  /** Null for what is measured of the whole stove or its fuel. */
  readonly part: string | null
  readonly opening: string | null
  readonly quantity: QuantityKey
  /** Blanks of a list of readings; null for a single one. */
  readonly readings: number | null
  /** As the plan has it; null where the plan does not say [SI unit of the quantity]. */
  readonly planned: number | null
  /** `height to the centre`. */
  readonly label: string
  /** How it is taken: one sentence. */
  readonly how: string
}
