import { emptyNetwork, type Network } from '#science/draft/network.ts'
import { createSolver } from '#science/draft/solve.ts'

/** One passage of a network, as data. */
export interface LinkData {
  readonly from: number
  readonly to: number
  readonly linear: number
  readonly quadratic: number
  readonly head: number
  readonly gain: number
}

export const networkOf = (nodes: number, links: readonly LinkData[]): Network => {
  const network = emptyNetwork(nodes, links.length)
  for (const [k, link] of links.entries()) {
    network.from[k] = link.from
    network.to[k] = link.to
    network.linear[k] = link.linear
    network.quadratic[k] = link.quadratic
    network.head[k] = link.head
    network.gain[k] = link.gain
  }
  return network
}

/** Solved from rest. */
export const solveNetwork = (nodes: number, links: readonly LinkData[]) => {
  const solver = createSolver(networkOf(nodes, links))
  const { status, residual, iterations } = solver.solve()
  return { status, residual, iterations, flow: [...solver.flow], pressure: [...solver.pressure] }
}

/** So little friction that the passage is a pure orifice to nine digits. */
const ALMOST_NOTHING = 1e-10

/** An orifice of this area: Δp = ṁ²/A². */
export const orifice = (from: number, to: number, area: number, head = 0): LinkData => ({
  from,
  to,
  linear: ALMOST_NOTHING,
  quadratic: 1 / area ** 2,
  head,
  gain: 1,
})
