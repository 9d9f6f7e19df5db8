import { STANDARD_GRAVITY } from '#basis/constants.ts'
import type { SparseElimination } from '#basis/numerics/sparseElimination.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { CREEPING_HOLE_LOSS } from '#science/draft/resistance.ts'
import { BUOYANT_EXCHANGE, UNSURE } from './exchange.ts'

/**
 * What every round asks of every link, as numbers, laid out once a stove. The open air counts as one node more, the last: its
 * state stands in the node arrays like any other's, and only what it gains is of no interest.
 */
export interface LinkTable {
  readonly from: Int32Array
  readonly to: Int32Array
  /** `PassageShape`, the creeping loss of holes by its coefficient [1/m³], [1/m⁴]. */
  readonly viscous: Float64Array
  readonly inertial: Float64Array
  /** Height of gas of either end's density that lifts the link [m]; times gravity and what that gas is lighter by, its head. */
  readonly riseFrom: Float64Array
  readonly riseTo: Float64Array
  /** Two-way flow by buoyancy, over density times the root of the relative difference of density [m³/s]. */
  readonly buoyant: Float64Array
  /** The same over the stove's largest flow, the least there is [1]. */
  readonly unsure: Float64Array
  /** Which segment of the bed it is, −1 for the others. */
  readonly segment: Int32Array
}

/** Lays the table out for one plan and one set of coefficients. */
export const linkTable = (plan: DraughtPlan, coefficients: Coefficients): LinkTable => {
  const { nodes, links, bed } = plan
  const numbered = (node: number): number => (node === OUTSIDE ? nodes.length : node)
  const heightOf = (node: number, otherwise: number): number => nodes[node]?.height ?? otherwise
  // Holes creep by the coefficient; a gap's friction is exact.
  const creep = coefficients.creepingHoleLoss / CREEPING_HOLE_LOSS
  const segment = new Int32Array(links.length).fill(-1)
  for (const [s, { link }] of bed.segments.entries()) segment[link] = s
  return {
    from: Int32Array.from(links, ({ from }) => numbered(from)),
    to: Int32Array.from(links, ({ to }) => numbered(to)),
    viscous: Float64Array.from(links, ({ kind, shape }) => (kind === 'gap' ? 1 : creep) * shape.viscous),
    inertial: Float64Array.from(links, ({ shape }) => shape.inertial),
    // In a gap the gas warms on the way: half of its height is filled with that of each end.
    riseFrom: Float64Array.from(links, ({ kind, from, to, height }) =>
      kind === 'gap' ? (heightOf(to, 0) - heightOf(from, 0)) / 2 : height - heightOf(from, height),
    ),
    riseTo: Float64Array.from(links, ({ kind, from, to, height }) =>
      kind === 'gap' ? (heightOf(to, 0) - heightOf(from, 0)) / 2 : heightOf(to, height) - height,
    ),
    buoyant: Float64Array.from(links, ({ kind, area, hydraulicDiameter }) =>
      kind === 'bed' ? 0 : 2 * BUOYANT_EXCHANGE * area * Math.sqrt(STANDARD_GRAVITY * hydraulicDiameter),
    ),
    unsure: Float64Array.from(links, ({ rowShare }) => (rowShare ?? 1) * UNSURE),
    segment,
  }
}

/** Where the four entries are held that couple two unknowns: the first with itself, with the second, the second with itself, with the first. */
export const meetingPlaces = (
  elimination: SparseElimination,
  pairs: readonly (readonly [number, number])[],
): Int32Array =>
  Int32Array.from(
    pairs.flatMap(([a, b]) => [
      elimination.place(a, a),
      elimination.place(a, b),
      elimination.place(b, b),
      elimination.place(b, a),
    ]),
  )
