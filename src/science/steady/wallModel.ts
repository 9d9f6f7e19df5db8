import type { DraughtPlan, WallSide, WallStretch } from '#science/draft/plan.ts'
import { STEEL_DENSITY } from '#stove/can/mass.ts'

/**
 * The stove's tin as lumps, one a stretch of wall: hot gas, char and flame on one side, the gap's air or the open air on
 * the other, radiation across a gap to the wall that faces it. In the steady state every stretch is in balance.
 */
export interface WallModel {
  readonly stretches: readonly WallStretch[]
  /** [K] */
  readonly temperature: Float64Array
  /** Of the outside [m²]. */
  readonly area: Float64Array
  /** The stretch across the gap, outwards; −1 for none. */
  readonly facing: Int32Array
  /** The stretches across the gap, inwards. */
  readonly facedBy: readonly (readonly number[])[]
  /** Stretches on both sides of each gap link. */
  readonly alongGap: readonly (readonly number[])[]
  /** Heat from flame and front that does not come through the gas [W]. */
  readonly source: Float64Array
  /** Heat a kelvin takes [J/K]. */
  readonly capacity: Float64Array
  /** Temperature before the time step [K], and one over its length [1/s]; 0 in the steady state. */
  readonly before: Float64Array
  readonly step: { perSecond: number }
  /** Heat to the open air [W]. */
  readonly outward: Float64Array
  /** Heat stored each second [W]. */
  readonly stored: Float64Array
  /** Mean air temperature along each gap link [K]. */
  readonly gapTemperature: Float64Array
  /** Wall area round each node [m²], and the share of its radiation that falls on it [1]. */
  readonly sideArea: Float64Array
  readonly sideShare: Float64Array
}

/** Heat capacity of mild steel between 20 and 400 °C, mean; from memory [J/(kg K)]. */
const STEEL_HEAT = 540

/** Do two walls look on the same stretch of gap, or the same ring of air? */
const isSameAir = (a: WallSide, b: WallSide): boolean =>
  (a.kind === 'gap' && b.kind === 'gap' && a.link === b.link) ||
  (a.kind === 'node' && b.kind === 'node' && a.node === b.node)

export const layOutWalls = ({ walls: stretches, nodes, links }: DraughtPlan, ambient: number): WallModel => {
  const facing = stretches.map(({ outside, radius }) =>
    stretches.findIndex((other) => other.radius > radius && isSameAir(outside, other.inside)),
  )
  const area = Float64Array.from(
    stretches,
    ({ radius, bottom, top }) => 2 * Math.PI * radius * (top - bottom),
  )
  const sideArea = new Float64Array(nodes.length)
  for (const [s, { inside }] of stretches.entries())
    if (inside.kind === 'node')
      sideArea[inside.node] = (sideArea[inside.node] as number) + (area[s] as number)
  const touches = (stretch: WallStretch, link: number): boolean =>
    [stretch.inside, stretch.outside].some((side) => side.kind === 'gap' && side.link === link)
  return {
    stretches,
    temperature: new Float64Array(stretches.length).fill(ambient),
    area,
    facing: Int32Array.from(facing),
    facedBy: stretches.map((_, s) => facing.flatMap((across, i) => (across === s ? [i] : []))),
    alongGap: links.map((_, k) => stretches.flatMap((stretch, s) => (touches(stretch, k) ? [s] : []))),
    source: new Float64Array(stretches.length),
    capacity: Float64Array.from(
      stretches,
      ({ thickness }, s) => STEEL_DENSITY * STEEL_HEAT * thickness * (area[s] as number),
    ),
    before: new Float64Array(stretches.length),
    step: { perSecond: 0 },
    outward: new Float64Array(stretches.length),
    stored: new Float64Array(stretches.length),
    gapTemperature: new Float64Array(links.length).fill(ambient),
    sideArea,
    // A grey gas radiates evenly: the wall gets its share of the surface round the space, floor and top the rest.
    sideShare: sideArea.map((side, node) => (side > 0 ? side / (side + 2 * (nodes[node]?.area ?? 0)) : 0)),
  }
}
