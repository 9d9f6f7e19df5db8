import type { Degrees, Metres, Millimetres } from '#basis/units.ts'
import type { RowOpening } from '#stove/model.ts'
import type { Development } from './development.ts'

/**
 * A wall rolled out: the wrap of a can, or the tin of a band. Everything a drawing of it needs, and
 * nothing of how it is drawn.
 */
export interface Strip {
  readonly title: string
  /** `paper`: goes round the can and is drilled through. `tin`: is glued on flat tin and cut with it. */
  readonly stuff: 'paper' | 'tin'
  readonly development: Development
  /** All the way round at the lower edge, from join to join [mm]. */
  readonly length: Millimetres
  /** Lower and upper edge above the part's bottom edge [m]. */
  readonly low: Metres
  readonly high: Metres
  /** Overlap beyond the join, at the lower edge [mm]. */
  readonly tab: Millimetres
  /** Bearing where the two ends meet. */
  readonly join: Degrees
  readonly rows: readonly NamedRow[]
  /** Bearing of the can's own side seam, where it is known. */
  readonly sideSeam: Degrees | null
  readonly beads: readonly { readonly from: Metres; readonly to: Metres }[]
  /** What the lower and the upper edge lie on, in a line or two; none where there is nothing to say. */
  readonly lowerEdge: readonly string[]
  readonly upperEdge: readonly string[]
  /** Words at an edge beyond which the can's end is cut out. */
  readonly cutOut: { readonly lower: readonly string[]; readonly upper: readonly string[] }
  /** Whether the can is cut off along an edge. */
  readonly cutEdges: { readonly lower: boolean; readonly upper: boolean }
  /** Bearings of tabs on the upper edge to turn a band by. */
  readonly fingerTabs: readonly number[]
  readonly tabText: readonly string[]
  /** How the strip is made and checked, for the notes. */
  readonly notes: readonly string[]
}

export interface NamedRow {
  readonly name: string
  readonly row: RowOpening
}
