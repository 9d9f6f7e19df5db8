import { planElimination } from '#basis/numerics/sparseElimination.ts'
import { linkFlow, type Network, OUTSIDE } from './network.ts'

/**
 * Balances a network by Newton's method on the node pressures with a backtracking line search. All storage and the order
 * of elimination are laid out once by `createSolver`, for who is joined to whom; `solve` allocates nothing.
 */
export interface NetworkSolver {
  /** Gauge pressures of the last solve; the start of the next one [Pa]. */
  readonly pressure: Float64Array
  /** Link flows of the last solve [kg/s]. */
  readonly flow: Float64Array
  /** Solves with the laws and heads the network holds now. `tolerance` is the relative imbalance that counts as balanced; 1e-11 unless said [1]. */
  solve(tolerance?: number): SolveReport
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

/**
 * A solver for one network, whose numbers, not whose plan, it reads anew at each solve; its arrays are overwritten by the next.
 */
export const createSolver = (net: Network): NetworkSolver => {
  const { nodes, links, linear, quadratic, head, gain } = net
  // The open air is one node more, the last, at pressure 0: its imbalance and its row of the matrix are thrown away.
  const airTo = (node: number): number => (node === OUTSIDE ? nodes : node)
  const from = net.from.map(airTo)
  const to = net.to.map(airTo)
  const pressures = new Float64Array(nodes + 1)
  const pressure = pressures.subarray(0, nodes)
  const step = new Float64Array(nodes)
  const imbalance = new Float64Array(nodes + 1)
  const flow = new Float64Array(links)
  const ends = Array.from({ length: links }, (_, k) => [net.from[k] as number, net.to[k] as number] as const)
  const elimination = planElimination(nodes, ends)
  const matrix = new Float64Array(elimination.places)
  /** Where each link's two rows meet its two columns: `from` with itself, with `to`, `to` with itself, with `from`. */
  const meets = Int32Array.from(
    ends.flatMap(([a, b]) => [
      elimination.place(a, a),
      elimination.place(a, b),
      elimination.place(b, b),
      elimination.place(b, a),
    ]),
  )
  const report: SolveReport = { status: 'not balanced', iterations: 0, residual: Number.POSITIVE_INFINITY }
  let largestFlow = 0

  /** Node imbalances (in − out) and flows at the pressures as they are; returns the sum of squares. */
  const evaluate = (): number => {
    imbalance.fill(0)
    let largest = 0
    for (let k = 0; k < links; k++) {
      const a = from[k] as number
      const b = to[k] as number
      const drive = (pressures[a] as number) - (pressures[b] as number) + (head[k] as number)
      const r1 = linear[k] as number
      // `linkFlow`, written out.
      const m = (2 * drive) / (r1 + Math.sqrt(r1 * r1 + 4 * (quadratic[k] as number) * Math.abs(drive)))
      flow[k] = m
      const size = Math.abs(m)
      if (size > largest) largest = size
      imbalance[a] = (imbalance[a] as number) - m
      imbalance[b] = (imbalance[b] as number) + (m > 0 ? m * (gain[k] as number) : m)
    }
    largestFlow = largest
    let squares = 0
    for (let i = 0; i < nodes; i++) squares += (imbalance[i] as number) * (imbalance[i] as number)
    return squares
  }

  const worst = (): number => {
    let most = 0
    for (let i = 0; i < nodes; i++) {
      const size = Math.abs(imbalance[i] as number)
      if (size > most) most = size
    }
    return largestFlow > 0 ? most / largestFlow : 0
  }

  /** Jacobian of −imbalance by pressure, at the flows of the last `evaluate`; each row is diagonally dominant. */
  const assemble = (): void => {
    matrix.fill(0)
    for (let k = 0, at = 0; k < links; k++, at += 4) {
      const m = flow[k] as number
      // √(r1² + 4 r2 |Δp|) = r1 + 2 r2 |ṁ| on the law itself.
      const g = 1 / ((linear[k] as number) + 2 * (quadratic[k] as number) * Math.abs(m))
      const received = m > 0 ? g * (gain[k] as number) : g
      const aa = meets[at] as number
      const ab = meets[at + 1] as number
      const bb = meets[at + 2] as number
      const ba = meets[at + 3] as number
      matrix[aa] = (matrix[aa] as number) + g
      matrix[ab] = (matrix[ab] as number) - g
      matrix[bb] = (matrix[bb] as number) + received
      matrix[ba] = (matrix[ba] as number) - received
    }
  }

  /** Good enough is decided by the residual alone. */
  const conclude = (): SolveReport => {
    report.residual = worst()
    if (report.residual > ACCEPTABLE) {
      // Spaces with one way out stand still: what flows is the rounding error of their heads.
      const most = mostFlow(net)
      if (largestFlow < STILL * most) report.residual *= largestFlow / most
    }
    report.status = report.residual <= ACCEPTABLE ? 'balanced' : 'not balanced'
    return report
  }

  const solve = (tolerance = TOLERANCE): SolveReport => {
    report.iterations = 0
    let squares = evaluate()
    while (report.iterations < MAX_ITERATIONS) {
      report.residual = worst()
      if (!Number.isFinite(squares)) {
        report.status = 'not finite'
        return report
      }
      if (report.residual <= tolerance) {
        report.status = 'balanced'
        return report
      }
      report.iterations++
      assemble()
      if (!elimination.solve(matrix, imbalance)) {
        report.status = 'sealed'
        return report
      }
      // `imbalance` holds the step now; `step` keeps it while the line search overwrites `imbalance`.
      for (let i = 0; i < nodes; i++) {
        step[i] = imbalance[i] as number
        pressures[i] = (pressures[i] as number) + (step[i] as number)
      }
      let stepped = 1
      let next = evaluate()
      let halvings = 0
      while (!(next <= squares * (1 - SUFFICIENT * stepped)) && halvings < MAX_HALVINGS) {
        halvings++
        const half = stepped / 2
        for (let i = 0; i < nodes; i++) pressures[i] = (pressures[i] as number) - half * (step[i] as number)
        stepped = half
        next = evaluate()
      }
      // Rounding floor: no step makes it better.
      if (!(next < squares)) return conclude()
      squares = next
    }
    return conclude()
  }

  return { pressure, flow, solve }
}
