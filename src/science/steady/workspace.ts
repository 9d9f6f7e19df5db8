import type { Coefficients } from '#science/coefficients.ts'
import { emptyNetwork, type Network, OUTSIDE } from '#science/draft/network.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { createSolver, type NetworkSolver } from '#science/draft/solve.ts'
import type { Fuel } from '#science/fuel/table.ts'
import { AIR, specificEnthalpy } from '#science/gas/blend.ts'
import type { Site } from '#science/site.ts'

export interface SteadyInput {
  readonly plan: DraughtPlan
  readonly fuel: Fuel
  /** Wet basis [1]. */
  readonly moisture: number
  readonly site: Site
  readonly coefficients: Coefficients
}

/**
 * Everything the steady state is worked out in, laid out once a stove: the inner loop allocates next to nothing.
 * Node arrays are indexed as `plan.nodes`, link arrays as `plan.links`.
 */
export interface Workspace extends SteadyInput {
  readonly network: Network
  readonly solver: NetworkSolver
  readonly airDensity: number
  readonly airEnthalpy: number
  /** [K] */
  readonly temperature: Float64Array
  /** Mass fraction that came from the front [1]. */
  readonly gasFraction: Float64Array
  /** [J/kg] */
  readonly enthalpy: Float64Array
  /** Heat that leaves each node by radiation or through its wall [W]. */
  readonly loss: Float64Array
  readonly density: Float64Array
  /** Of the gas that passes each link [kg/m³], [Pa s]. */
  readonly linkDensity: Float64Array
  readonly linkViscosity: Float64Array
  /** Heat that the air of each gap link takes up [W]. */
  readonly gapHeat: Float64Array
  /** Links that touch each node, as a compressed list: entries `linksStart[i]` to `linksStart[i + 1]` of `linksOf`. */
  readonly linksStart: Int32Array
  readonly linksOf: Int32Array
  /** Ring gaps that air rises in: where the wall passes heat on. */
  readonly gapLinks: readonly number[]
  readonly gapLength: number
  /** Which segment of the bed a link is, −1 for the others. */
  readonly segmentOf: Int32Array
}

export const layOut = (input: SteadyInput): Workspace => {
  const { plan, site } = input
  const n = plan.nodes.length
  const m = plan.links.length
  const network = emptyNetwork(n, m)
  const segmentOf = new Int32Array(m).fill(-1)
  for (const [s, segment] of plan.bed.segments.entries()) segmentOf[segment.link] = s
  const touching: number[][] = Array.from({ length: n }, () => [])
  for (const [k, link] of plan.links.entries()) {
    network.from[k] = link.from
    network.to[k] = link.to
    for (const node of [link.from, link.to]) if (node !== OUTSIDE) touching[node]?.push(k)
  }
  const linksStart = new Int32Array(n + 1)
  for (const [i, list] of touching.entries()) linksStart[i + 1] = (linksStart[i] as number) + list.length
  const gapLinks = plan.links.flatMap((link, k) => (link.kind === 'gap' ? [k] : []))
  return {
    ...input,
    network,
    solver: createSolver(n, m),
    airDensity: site.pressure / (AIR.gasConstant * site.temperature),
    airEnthalpy: specificEnthalpy(AIR, site.temperature),
    temperature: new Float64Array(n),
    gasFraction: new Float64Array(n),
    enthalpy: new Float64Array(n),
    loss: new Float64Array(n),
    density: new Float64Array(n),
    linkDensity: new Float64Array(m),
    linkViscosity: new Float64Array(m),
    gapHeat: new Float64Array(m),
    linksStart,
    linksOf: Int32Array.from(touching.flat()),
    gapLinks,
    gapLength: gapLinks.reduce((sum, k) => sum + (plan.links[k]?.length ?? 0), 0),
    segmentOf,
  }
}

/** Where the front stands and what it makes, for one round of the iteration. */
export interface FrontPlace {
  /** Of the front above the bed's base [m]. */
  readonly height: number
  /** The bed link that turns air to gas. */
  readonly link: number
  readonly segment: number
}

export const placeFront = ({ plan: { bed } }: Workspace, position: number): FrontPlace => {
  const height = (1 - position) * bed.depth
  const found = bed.segments.findIndex((s) => height >= s.from && height <= s.to)
  const segment = found < 0 ? bed.segments.length - 1 : found
  return { height, segment, link: bed.segments[segment]?.link ?? 0 }
}
