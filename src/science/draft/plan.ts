import type { Duty } from '#stove/model.ts'
import type { PassageShape } from './resistance.ts'

/**
 * A stove as a network. It still knows its names and shapes, so that the answer can be told in the maker's words; the
 * solver sees numbers only.
 */
export interface DraughtPlan {
  readonly nodes: readonly DraughtNode[]
  readonly links: readonly DraughtLink[]
  readonly bed: BedPlace
  readonly walls: readonly WallStretch[]
  readonly hearth: Hearth
}

/** Where the flame comes out, and what it heats. */
export interface Hearth {
  /** The concentrator's bore, or the can's mouth where there is none: height and diameter [m]. */
  readonly height: number
  readonly diameter: number
  /** Of the pot's bottom above the ground, null without a pot stand or a pot [m]. */
  readonly potBottom: number | null
  readonly potDiameter: number | null
  /** Vanes beside the bore, null for none. */
  readonly vanes: {
    /** Inner over outer radius [1]. */
    readonly hubRatio: number
    /** Of the tongues out of the disc [deg]. */
    readonly tongueAngle: number
    /** Free area of vanes and bore [m²]. */
    readonly area: number
    readonly boreArea: number
  } | null
}

export interface DraughtNode {
  readonly name: string
  readonly space: 'air' | 'bed' | 'flame'
  /** Height at which the node's pressure is meant [m]. */
  readonly height: number
  /** Flow area of the chamber [m²]. */
  readonly area: number
}

export interface DraughtLink {
  readonly kind: 'opening' | 'throat' | 'gap' | 'bed'
  readonly name: string
  readonly part: string | null
  readonly opening: string | null
  readonly duty: Duty | null
  readonly from: number
  readonly to: number
  /** Where the passage lies [m]; a gap or bed link reaches from its nodes' heights. */
  readonly height: number
  /** Free area [m²]. */
  readonly area: number
  readonly hydraulicDiameter: number
  readonly count: number
  /** Of its row's holes, below 1 where a row is parted because its holes feel different winds; 1 if left out [1]. */
  readonly rowShare?: number
  readonly shape: PassageShape
  /** Gap and bed links: how far up they reach [m]. */
  readonly length: number
  /** How wind reaches the end of it that lies in the open air; null where neither end does. */
  readonly exposure: Exposure | null
}

/** In a wall, each hole at its own bearing [deg]; in an open top; or under the stove, where the air is still. */
export type Exposure =
  | { readonly kind: 'wall'; readonly bearings: readonly number[] }
  | { readonly kind: 'top' }
  | { readonly kind: 'under' }

/** The fuel bed and its links, which change as the front travels. */
export interface BedPlace {
  readonly part: string
  readonly base: number
  readonly depth: number
  /** [m²] */
  readonly area: number
  /** Index of each bed link, from the floor up, and the heights it joins above the bed's base [m]. */
  readonly segments: readonly { readonly link: number; readonly from: number; readonly to: number }[]
}

export type PlanOutcome =
  | { readonly ok: true; readonly plan: DraughtPlan }
  | { readonly ok: false; readonly reason: PlanFailure }

export interface PlanFailure {
  readonly code: 'no fuel can' | 'no floor under the fuel' | 'no air to the fuel' | 'no way out'
  readonly sentence: string
}

/**
 * A stretch of a can's wall between two heights with the same space on each side all along. Where the outside is a
 * ring gap the stretch lies along one gap link; `facing` is the stretch on the other side of that gap.
 */
export interface WallStretch {
  readonly part: string
  /** [m] */
  readonly bottom: number
  readonly top: number
  /** Outside radius and thickness of the tin [m]. */
  readonly radius: number
  readonly thickness: number
  readonly inside: WallSide
  readonly outside: WallSide
}

/** What a wall looks on: a node, a gap link, the fuel bed, or the open air. */
export type WallSide =
  | { readonly kind: 'node'; readonly node: number }
  | { readonly kind: 'gap'; readonly link: number }
  | { readonly kind: 'bed' }
  | { readonly kind: 'open air' }
