import type { Problem } from '#basis/problem.ts'
import type { Mesh } from '../solid/mesh.ts'

/** One hole of a guide. */
export interface GuideHole {
  readonly opening: string
  /** Position in its row, or number in its pattern, from 1. */
  readonly position: number
  /** Bearing on the part [deg]. */
  readonly bearing: number
  /** Of a hole in a wall: its middle above the part's bottom edge [mm]; of one in a face, from the middle. */
  readonly at: number
  /** Of the guide hole, play included [mm]. */
  readonly diameter: number
  /** The same hole as it lies in the printed piece: bearing clockwise from +y seen from above [deg]. */
  readonly printedBearing: number
  /** Height above the bed of a hole in a wall, distance from the axis of one in a face [mm]. */
  readonly printedAt: number
}

/** A drill guide to print. Pieces stand as they are printed, their axis at x = y = 0, the bed at z = 0 [mm]. */
export interface DrillGuide {
  readonly name: string
  readonly part: string
  readonly kind: 'collar' | 'centring disc'
  readonly pieces: readonly Mesh[]
  readonly holes: readonly GuideHole[]
  /** The diameter that goes over, or into, what is to be drilled, with tolerance and clearance [mm]. */
  readonly fitDiameter: number
  /** What of the stove it was made for: the measured diameter and its tolerance [mm]. */
  readonly measured: { readonly diameter: number; readonly tolerance: number }
  /** Largest box a piece takes on the bed, turned as suits it best [mm]. */
  readonly box: readonly [number, number, number]
  /** How to print it, put it on, and drill, in sentences. */
  readonly notes: readonly string[]
}

export interface Guides {
  readonly guides: readonly DrillGuide[]
  /** Openings that get no guide, each with why. */
  readonly without: readonly { readonly part: string; readonly opening: string; readonly why: string }[]
  /** Guides that could not be made with these options. */
  readonly refused: readonly Problem[]
}
