import { STANDARD_GRAVITY } from '#basis/constants.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import type { FrontPlace, Workspace } from './workspace.ts'

/**
 * Gas passes an opening both ways when the net flow through it is small and the gas on the two sides differs in
 * density. Forward and back flow are m⁺ = (m + √(m² + ε²))/2 and m⁻ = m⁺ − m, so that at no net flow ε/2 goes each way
 * and at a strong net flow the back flow dies out as ε²/(4m). Mass and heat close for any ε, and nothing jumps where
 * a flow turns round.
 *
 * ε comes from the buoyant exchange through a short hole, Q = 0.055 A √(g d Δρ/ρ), Epstein, J. Heat Transfer 110 (1988)
 * 885 [bib:epstein1988]; from memory. It is for one light gas under a heavy one; a hole in an upright wall exchanges more.
 */
const EPSTEIN = 0.055

/**
 * A flow within this share of the stove's largest is not known to run one way: the walls of such a passage are uneven, the
 * air outside is never quite still. It is also what keeps the iteration from swinging about a flow that turns round. A row
 * that is parted for the wind shares it out, so that parting alone changes nothing. Where a wind blows far more through the
 * shell than the fire draws, it stirs the flame more than it should [1].
 */
const UNSURE = 0.03

/** Differences of density below this share still exchange a little, so that the split stays smooth at zero flow. */
const LEAST_DIFFERENCE = 0.1

/** Scale of the two-way flow of each link [kg/s], and from it the share that goes forward. */
export const setExchange = (w: Workspace, place: FrontPlace): void => {
  const { plan, density, airDensity, exchange, solver } = w
  let largest = 0
  for (let k = 0; k < solver.flow.length; k++) largest = Math.max(largest, Math.abs(solver.flow[k] as number))
  for (let k = 0; k < plan.links.length; k++) {
    const link = plan.links[k] as (typeof plan.links)[number]
    const unsure = (link.rowShare ?? 1) * UNSURE * largest
    if (link.kind === 'bed') {
      // The front itself passes one way; what lies still below or above it does not know which.
      exchange[k] = k === place.link ? 0 : unsure
      w.share[k] = forwardShare(solver.flow[k] as number, exchange[k] as number)
      continue
    }
    const a = link.from === OUTSIDE ? airDensity : (density[link.from] as number)
    const b = link.to === OUTSIDE ? airDensity : (density[link.to] as number)
    const mean = (a + b) / 2
    const difference = Math.max(LEAST_DIFFERENCE, Math.abs(a - b) / mean)
    const buoyant =
      2 * EPSTEIN * mean * link.area * Math.sqrt(STANDARD_GRAVITY * link.hydraulicDiameter * difference)
    exchange[k] = Math.max(buoyant, unsure)
    w.share[k] = forwardShare(solver.flow[k] as number, exchange[k] as number)
  }
}

/** Part of a link's flow that goes from `from` to `to`; the rest of it, less the net flow, comes back [kg/s]. */
export const forwardFlow = (net: number, exchange: number): number =>
  exchange === 0 ? Math.max(0, net) : (net + Math.sqrt(net * net + exchange * exchange)) / 2

/** Share of all that passes a link that goes forward [1]. */
export const forwardShare = (net: number, exchange: number): number => {
  const forward = forwardFlow(net, exchange)
  const total = 2 * forward - net
  return total > 0 ? forward / total : 0.5
}
