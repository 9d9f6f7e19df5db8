import type { CanItem } from '#stove/document/shelfItem.ts'
import type { Bit, Can } from '#stove/model.ts'

/** A can of the shelf: as its maker wrote it, and as it reads [m]. */
export interface ShelfCan {
  readonly name: string
  readonly item: CanItem
  readonly can: Can
}

/** What a stove is to be started from. */
export interface StartChoice {
  readonly name: string
  /** Stands round the other. */
  readonly outer: ShelfCan
  /** Holds the fuel. */
  readonly inner: ShelfCan
  readonly potStand: ShelfCan | null
  readonly damper: boolean
  /** Slits round the bore of the concentrator, bent into vanes. */
  readonly vanes: boolean
  /** None: the bits of a usual set. */
  readonly bits: readonly Bit[]
  /** Key in the fuel table. */
  readonly fuel: string
  /** Outside, across its bottom; null for the usual mug or pot that goes with the cans [m]. */
  readonly potDiameter: number | null
}

/**
 * How the inner can is held.
 * - `by its rim`: its seam rests on the opening of the outer one.
 * - `by a ring`: a flat ring lies on the outer can and carries that seam.
 * - `on feet`: it stands on screws in the outer can, rims level.
 */
export type Holding = 'by its rim' | 'by a ring' | 'on feet'

/**
 * What carries the fuel: the can's own floor, drilled; or a grate on screws, where the can's bottom is cut off, because
 * its bottom seam would not pass or because the can is too tall.
 */
export type Floor = 'its own' | 'a grate'

/** What is decided besides the cans: one way of many to build a stove of them. */
export interface Way {
  readonly holding: Holding
  readonly floor: Floor
  /** Share of the fuel can's section that the secondary row opens [1]. */
  readonly secondary: number
  /** Largest number of holes in the floor. */
  readonly floorHoles: number
  /** Bore of the concentrator over the inside of the fuel can [1]. */
  readonly bore: number
}
