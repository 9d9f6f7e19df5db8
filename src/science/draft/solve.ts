import { eliminatePivoted } from '#basis/numerics/elimination.ts'
import { linkFlow, type Network, OUTSIDE } from './network.ts'

/**
 * Balances a network by Newton's method on the node pressures with a backtracking line search.
 * All storage is laid out once by `createSolver`; `solve` allocates nothing.
 */
export interface NetworkSolver {
  /** Gauge pressures of the last solve; the start of the next one [Pa]. */
  readonly pressure: Float64Array
  /** Link flows of the last solve [kg/s]. */
  readonly flow: Float64Array
  /** `tolerance` is the relative imbalance that counts as balanced; 1e-11 unless said [1]. */
  solve(network: Network, tolerance?: number): SolveReport
}

export interface SolveReport {
  /** `sealed`: some chamber has no way to the outside, so its pressure is undefined. */
  status: 'balanced' | 'not balanced' | 'sealed' | 'not finite'
  iterations: number
  /** Largest node imbalance over the largest flow, or over what the heads could drive where nothing flows [1]. */
  residual: number
}

/** Relative node imbalance that counts as balanced; the bar is 1e-9. */
const TOLERANCE = 1e-11
/** What is taken where rounding allows no better: the bar itself [1]. */
const ACCEPTABLE = 1e-9
/** Share of what the heads could drive below which nothing flows [1]. */
const STILL = 1e-7
const MAX_ITERATIONS = 80
const MAX_HALVINGS = 30
/**
 * A step of length t must take at least this share of t off the sum of squares (Armijo's rule). Any decrease will not
 * do: between two equal holes with nothing to drive them, √ laws send Newton's step from p to −p and back for ever.
 */
const SUFFICIENT = 0.2

/** What the largest head would drive through the widest passage: the yardstick where nothing flows [kg/s]. */
const mostFlow = ({ links, linear, quadratic, head }: Network): number => {
  let drive = 0
  for (let k = 0; k < links; k++) drive = Math.max(drive, Math.abs(head[k] as number))
  let most = 0
  for (let k = 0; k < links; k++)
    most = Math.max(most, linkFlow(linear[k] as number, quadratic[k] as number, drive))
  return most
}

export const createSolver = (maxNodes: number, maxLinks: number): NetworkSolver => {
  const pressure = new Float64Array(maxNodes)
  const trial = new Float64Array(maxNodes)
  const imbalance = new Float64Array(maxNodes)
  const flow = new Float64Array(maxLinks)
  const matrix = new Float64Array(maxNodes * maxNodes)
  const report: SolveReport = { status: 'not balanced', iterations: 0, residual: Number.POSITIVE_INFINITY }
  let largestFlow = 0

  /** Node imbalances (in − out) and flows at pressures `p`; returns the sum of squares. */
  const evaluate = (net: Network, p: Float64Array): number => {
    const { nodes, links, from, to, linear, quadratic, head, gain } = net
    for (let i = 0; i < nodes; i++) imbalance[i] = 0
    largestFlow = 0
    for (let k = 0; k < links; k++) {
      const a = from[k] as number
      const b = to[k] as number
      const drive =
        (a === OUTSIDE ? 0 : (p[a] as number)) - (b === OUTSIDE ? 0 : (p[b] as number)) + (head[k] as number)
      const r1 = linear[k] as number
      const m = (2 * drive) / (r1 + Math.sqrt(r1 * r1 + 4 * (quadratic[k] as number) * Math.abs(drive)))
      flow[k] = m
      const size = Math.abs(m)
      if (size > largestFlow) largestFlow = size
      if (a !== OUTSIDE) imbalance[a] = (imbalance[a] as number) - m
      if (b !== OUTSIDE) imbalance[b] = (imbalance[b] as number) + (m > 0 ? m * (gain[k] as number) : m)
    }
    let squares = 0
    for (let i = 0; i < nodes; i++) squares += (imbalance[i] as number) * (imbalance[i] as number)
    return squares
  }

  const worst = (nodes: number): number => {
    let most = 0
    for (let i = 0; i < nodes; i++) {
      const size = Math.abs(imbalance[i] as number)
      if (size > most) most = size
    }
    return largestFlow > 0 ? most / largestFlow : 0
  }

  /** Jacobian of −imbalance by pressure, at the flows of the last `evaluate`. */
  const assemble = (net: Network): void => {
    const { nodes, links, from, to, linear, quadratic, gain } = net
    for (let i = 0; i < nodes * nodes; i++) matrix[i] = 0
    for (let k = 0; k < links; k++) {
      const a = from[k] as number
      const b = to[k] as number
      const m = flow[k] as number
      // √(r1² + 4 r2 |Δp|) = r1 + 2 r2 |ṁ| on the law itself.
      const g = 1 / ((linear[k] as number) + 2 * (quadratic[k] as number) * Math.abs(m))
      const received = m > 0 ? g * (gain[k] as number) : g
      if (a !== OUTSIDE) {
        matrix[a * nodes + a] = (matrix[a * nodes + a] as number) + g
        if (b !== OUTSIDE) matrix[a * nodes + b] = (matrix[a * nodes + b] as number) - g
      }
      if (b !== OUTSIDE) {
        matrix[b * nodes + b] = (matrix[b * nodes + b] as number) + received
        if (a !== OUTSIDE) matrix[b * nodes + a] = (matrix[b * nodes + a] as number) - received
      }
    }
  }

  /** Good enough is decided by the residual alone. */
  const conclude = (net: Network): SolveReport => {
    report.residual = worst(net.nodes)
    if (report.residual > ACCEPTABLE) {
      // Spaces with one way out stand still: what flows is the rounding error of their heads.
      const most = mostFlow(net)
      if (largestFlow < STILL * most) report.residual *= largestFlow / most
    }
    report.status = report.residual <= ACCEPTABLE ? 'balanced' : 'not balanced'
    return report
  }

  const solve = (net: Network, tolerance = TOLERANCE): SolveReport => {
    const n = net.nodes
    report.iterations = 0
    let squares = evaluate(net, pressure)
    while (report.iterations < MAX_ITERATIONS) {
      report.residual = worst(n)
      if (!Number.isFinite(squares)) {
        report.status = 'not finite'
        return report
      }
      if (report.residual <= tolerance) {
        report.status = 'balanced'
        return report
      }
      report.iterations++
      assemble(net)
      if (!eliminatePivoted(matrix, n, imbalance)) {
        report.status = 'sealed'
        return report
      }
      // `imbalance` holds the step now; `trial` keeps it while the line search overwrites `imbalance`.
      for (let i = 0; i < n; i++) trial[i] = imbalance[i] as number
      let stepped = 1
      for (let i = 0; i < n; i++) pressure[i] = (pressure[i] as number) + (trial[i] as number)
      let next = evaluate(net, pressure)
      let halvings = 0
      while (!(next <= squares * (1 - SUFFICIENT * stepped)) && halvings < MAX_HALVINGS) {
        halvings++
        const half = stepped / 2
        for (let i = 0; i < n; i++) pressure[i] = (pressure[i] as number) - half * (trial[i] as number)
        stepped = half
        next = evaluate(net, pressure)
      }
      // Rounding floor: no step makes it better.
      if (!(next < squares)) return conclude(net)
      squares = next
    }
    return conclude(net)
  }

  return { pressure, flow, solve }
}
