import type { FrontPlace } from './frontPlace.ts'
import type { Workspace } from './workspace.ts'

/**
 * Gas passes an opening both ways when the net flow through it is small and the gas on the two sides differs in
 * density. Forward and back flow are m⁺ = (m + √(m² + ε²))/2 and m⁻ = m⁺ − m, so that at no net flow ε/2 goes each way
 * and at a strong net flow the back flow dies out as ε²/(4m). Mass and heat close for any ε, and nothing jumps where
 * a flow turns round.
 *
 * ε comes from the buoyant exchange through a short hole, Q = 0.055 A √(g d Δρ/ρ), Epstein, J. Heat Transfer 110 (1988)
 * 885 [bib:epstein1988]; from memory. It is for one light gas under a heavy one; a hole in an upright wall exchanges more.
 */
export const BUOYANT_EXCHANGE = 0.055

/**
 * A flow within this share of the stove's largest is not known to run one way: the walls of such a passage are uneven, the
 * air outside is never quite still. It is also what keeps the iteration from swinging about a flow that turns round. A row
 * that is parted for the wind shares it out, so that parting alone changes nothing. Where a wind blows far more through the
 * shell than the fire draws, it stirs the flame more than it should [1].
 */
export const UNSURE = 0.03

/** Differences of density below this share still exchange a little, so that the split stays smooth at zero flow. */
const LEAST_DIFFERENCE = 0.1

/** How much goes each way through every link [kg/s], and from it the share that goes forward. */
export const setExchange = (w: Workspace, place: FrontPlace): void => {
  const { table, density, exchange, forward, back, share } = w
  const { from, to, buoyant, unsure, segment } = table
  const { flow } = w.solver
  let largest = 0
  for (let k = 0; k < flow.length; k++) largest = Math.max(largest, Math.abs(flow[k] as number))
  for (let k = 0; k < flow.length; k++) {
    let scale = (unsure[k] as number) * largest
    if ((segment[k] as number) < 0) {
      const a = density[from[k] as number] as number
      const b = density[to[k] as number] as number
      const mean = (a + b) / 2
      const difference = Math.max(LEAST_DIFFERENCE, Math.abs(a - b) / mean)
      scale = Math.max(scale, (buoyant[k] as number) * mean * Math.sqrt(difference))
    } else if (k === place.link) scale = 0
    // The front itself passes one way; the bed still below or above it does not know which.
    const net = flow[k] as number
    const ahead = forwardFlow(net, scale)
    const total = 2 * ahead - net
    exchange[k] = scale
    forward[k] = ahead
    back[k] = ahead - net
    share[k] = total > 0 ? ahead / total : 0.5
  }
}

/** Part of a link's flow that goes from `from` to `to`; the rest of it, less the net flow, comes back [kg/s]. */
export const forwardFlow = (net: number, exchange: number): number =>
  exchange === 0 ? Math.max(0, net) : (net + Math.sqrt(net * net + exchange * exchange)) / 2
