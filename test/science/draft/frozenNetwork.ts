import { STANDARD_GRAVITY } from '#basis/constants.ts'
import { planDraught } from '#science/draft/build.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { bed, inSeries } from '#science/draft/resistance.ts'
import { AIR } from '#science/gas/blend.ts'
import { airViscosity } from '#science/gas/transport.ts'
import type { LinkData } from '#scripts/validation/draught/solvedNetwork.ts'
import type { Stove } from '#stove/model.ts'

/** Temperatures that stay as they are whatever flows [K], and what the front adds to the air [1]. */
export interface Frozen {
  readonly air: number
  readonly gap: number
  readonly flame: number
  readonly gain: number
}

export const frozen: Frozen = { air: 293.15, gap: 340, flame: 1200, gain: 1.55 }

/** The draught plan of a stove that is known to have one. */
export const planOf = (stove: Stove): DraughtPlan => {
  const outcome = planDraught(stove)
  if (!outcome.ok) throw new Error(outcome.reason.sentence)
  return outcome.plan
}

/**
 * A stove's air network with temperatures given: air as the gas everywhere, pellets in the bed, the front half way
 * down. Densities belong to links and nodes, not to flow directions, so the network is a fixed one.
 */
export const frozenNetwork = (
  { nodes, links, bed: place }: DraughtPlan,
  { air, gap, flame, gain }: Frozen = frozen,
): { readonly nodes: number; readonly links: readonly LinkData[] } => {
  const density = (T: number): number => 101325 / (AIR.gasConstant * T)
  const temperatureOf = (node: number): number => {
    const space = node === OUTSIDE ? undefined : nodes[node]
    if (space === undefined || space.space === 'bed') return air
    if (space.space === 'flame') return flame
    return space.name.startsWith('gap') ? gap : air
  }
  /** Weight of the outside air over a node's gas, a metre of height [Pa/m]. */
  const lift = (node: number): number => (density(air) - density(temperatureOf(node))) * STANDARD_GRAVITY
  const heightOf = (node: number, otherwise: number): number => nodes[node]?.height ?? otherwise
  const front = place.depth / 2
  const front_ = place.segments.findIndex(({ from, to }) => front >= from && front <= to)
  return {
    nodes: nodes.length,
    links: links.map((link, k): LinkData => {
      const { from, to } = link
      const segment = place.segments.findIndex((s) => s.link === k)
      if (segment >= 0) {
        const stretch = place.segments[segment] as (typeof place.segments)[number]
        const depth = stretch.to - stretch.from
        const shape = inSeries(
          bed(place.area, depth / 2, 0.46, 0.007),
          bed(place.area, depth / 2, 0.55, 0.006),
        )
        const T = segment < front_ ? air : 600
        return {
          from,
          to,
          linear: (shape.viscous * airViscosity(T)) / density(T),
          quadratic: shape.inertial / density(T),
          head: (density(air) - density(T)) * STANDARD_GRAVITY * depth,
          gain: segment === front_ ? gain : 1,
        }
      }
      const T = (temperatureOf(from) + temperatureOf(to)) / 2
      const head =
        link.kind === 'gap'
          ? ((lift(from) + lift(to)) / 2) * (heightOf(to, 0) - heightOf(from, 0))
          : lift(from) * (link.height - heightOf(from, link.height)) -
            lift(to) * (link.height - heightOf(to, link.height))
      return {
        from,
        to,
        linear: (link.shape.viscous * airViscosity(T)) / density(T),
        quadratic: link.shape.inertial / density(T),
        head,
        gain: 1,
      }
    }),
  }
}
