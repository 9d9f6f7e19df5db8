import type { Coefficients } from '#science/coefficients.ts'
import type { DraughtPlan, WallSide, WallStretch } from '#science/draft/plan.ts'
import { MEAN_STEEL_HEAT } from '#science/heat/steel.ts'
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
  /** Now, at the temperature it has [1]. */
  readonly emissivity: Float64Array
  /** Walls that the gas of a node touches: each pair of the two. */
  readonly contacts: readonly { readonly wall: number; readonly node: number }[]
  /** Walls that face each other across a gap or a ring of air. */
  readonly facing: readonly { readonly inner: number; readonly outer: number }[]
  /** Sides that look on the open air; `counts` for the outer ones, whose loss a maker feels. */
  readonly open: readonly { readonly wall: number; readonly height: number; readonly counts: boolean }[]
  /** Ring gaps that air rises in: their link and the walls on both sides, none twice. */
  readonly gaps: readonly GapWalls[]
  /** Share of the front's loss that reaches each wall, with the front where it is [1]. */
  readonly besideChar: Float64Array
  /** The node whose flame shines on a wall, −1 for none, and the share of the heat burnt there that it gets [1]. */
  readonly flameNode: Int32Array
  readonly flameShare: Float64Array
  /** Heat a kelvin takes [J/K]. */
  readonly capacity: Float64Array
  /** Temperature before the time step [K], and one over its length [1/s]; 0 in the steady state. */
  readonly before: Float64Array
  readonly step: { perSecond: number }
  /** Heat to the open air [W]. */
  readonly outward: Float64Array
  /** Heat stored each second [W]. */
  readonly stored: Float64Array
  /** Mean air temperature along each of `gaps` [K]. */
  readonly gapTemperature: Float64Array
  /** The share of each node's radiation that falls on walls round it [1]. */
  readonly sideShare: Float64Array
}

export interface GapWalls {
  readonly link: number
  readonly walls: readonly number[]
  /** Share of each in their area [1], and the area [m²]. */
  readonly weights: Float64Array
  readonly area: number
}

/** Do two walls look on the same stretch of gap, or the same ring of air? */
const isSameAir = (a: WallSide, b: WallSide): boolean =>
  (a.kind === 'gap' && b.kind === 'gap' && a.link === b.link) ||
  (a.kind === 'node' && b.kind === 'node' && a.node === b.node)

const sides = ({ inside, outside }: WallStretch): readonly WallSide[] => [inside, outside]

/** Lays out the walls of a plan in a day of `ambient` [K]: areas, shares of radiation, heat held. */
export const layOutWalls = (
  { walls: stretches, nodes, links }: DraughtPlan,
  ambient: number,
  coefficients: Coefficients,
): WallModel => {
  const area = Float64Array.from(
    stretches,
    ({ radius, bottom, top }) => 2 * Math.PI * radius * (top - bottom),
  )
  const sideArea = new Float64Array(nodes.length)
  for (const [s, { inside }] of stretches.entries())
    if (inside.kind === 'node')
      sideArea[inside.node] = (sideArea[inside.node] as number) + (area[s] as number)
  // A grey gas radiates evenly: the wall gets its share of the surface round the space, floor and top the rest.
  const sideShare = sideArea.map((side, node) =>
    side > 0 ? side / (side + 2 * (nodes[node]?.area ?? 0)) : 0,
  )
  const gapWalls = (link: number): GapWalls => {
    const walls = stretches.flatMap((stretch, s) =>
      sides(stretch).some((side) => side.kind === 'gap' && side.link === link) ? [s] : [],
    )
    const all = walls.reduce((sum, s) => sum + (area[s] as number), 0)
    return { link, walls, weights: Float64Array.from(walls, (s) => (area[s] as number) / all), area: all }
  }
  const gaps = links
    .flatMap(({ kind }, k) => (kind === 'gap' ? [gapWalls(k)] : []))
    .filter(({ walls }) => walls.length > 0)
  return {
    stretches,
    temperature: new Float64Array(stretches.length).fill(ambient),
    area,
    emissivity: new Float64Array(stretches.length),
    contacts: stretches.flatMap((stretch, wall) =>
      sides(stretch).flatMap((side) => (side.kind === 'node' ? [{ wall, node: side.node }] : [])),
    ),
    facing: stretches.flatMap(({ outside, radius }, inner) => {
      const outer = stretches.findIndex((other) => other.radius > radius && isSameAir(outside, other.inside))
      return outer < 0 ? [] : [{ inner, outer }]
    }),
    open: stretches.flatMap((stretch, wall) =>
      sides(stretch).flatMap((side) =>
        side.kind === 'open air'
          ? [{ wall, height: stretch.top - stretch.bottom, counts: side === stretch.outside }]
          : [],
      ),
    ),
    gaps,
    besideChar: new Float64Array(stretches.length),
    flameNode: Int32Array.from(stretches, ({ inside }) => (inside.kind === 'node' ? inside.node : -1)),
    flameShare: Float64Array.from(stretches, ({ inside }, s) =>
      inside.kind === 'node'
        ? (coefficients.flameRadiation * (sideShare[inside.node] as number) * (area[s] as number)) /
          (sideArea[inside.node] as number)
        : 0,
    ),
    capacity: Float64Array.from(
      stretches,
      ({ thickness }, s) => STEEL_DENSITY * MEAN_STEEL_HEAT * thickness * (area[s] as number),
    ),
    before: new Float64Array(stretches.length),
    step: { perSecond: 0 },
    outward: new Float64Array(stretches.length),
    stored: new Float64Array(stretches.length),
    gapTemperature: new Float64Array(gaps.length).fill(ambient),
    sideShare,
  }
}

/** Height of a stretch that lies beside char between two heights [m]. */
const lengthBesideChar = ({ inside, bottom, top: upTo }: WallStretch, from: number, top: number): number =>
  inside.kind === 'bed' ? Math.max(0, Math.min(upTo, top) - Math.max(bottom, from)) : 0

/** Shares the front's loss out among the walls beside the char over it; `height` is the front's above the bed's base [m]. */
export const shareFrontLoss = (
  { stretches, besideChar }: WallModel,
  { base, depth }: DraughtPlan['bed'],
  height: number,
): void => {
  const top = base + depth
  // At least the topmost millimetre of the bed glows as soon as it is lit.
  const from = Math.min(base + height, top - 1e-3)
  let all = 0
  for (const [s, stretch] of stretches.entries()) {
    besideChar[s] = lengthBesideChar(stretch, from, top)
    all += besideChar[s] as number
  }
  for (let s = 0; s < besideChar.length; s++) besideChar[s] = all > 0 ? (besideChar[s] as number) / all : 0
}
