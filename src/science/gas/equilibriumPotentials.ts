import { dot, type Linearisation, linearise } from './equilibriumComponents.ts'

/** An ideal-gas mixture whose equilibrium is sought at one temperature and pressure. */
export interface GasProblem {
  /** Atoms of each element in a mole of each species. */
  readonly formulas: readonly Float64Array[]
  /** Gibbs energy of each pure species at the pressure of the mixture, over R T [1]. */
  readonly gibbs: Float64Array
  /** Atoms of each element; all above zero [mol]. */
  readonly atoms: Float64Array
}

/** Where the search stands. */
export interface GasState {
  /** Chemical potential of each element over R T [1]. */
  readonly potentials: Float64Array
  /** Moles of gas, as the mole fractions are counted on [mol]. */
  readonly total: number
  /** Moles of each species [mol]. */
  readonly moles: Float64Array
  /** Newton steps so far. */
  readonly steps: number
}

export type GasOutcome =
  | { readonly ok: true; readonly state: GasState; readonly linearisation: Linearisation }
  | { readonly ok: false; readonly state: GasState }

const MOST_STEPS = 400
/** Changes of ln n that end the search; one more step is taken, which squares them. */
const SETTLED = 1e-8
/** Below this growth the total is moved together with the potentials. */
const NEAR = 0.5
/** Largest Gibbs energy of the first, softened problem, and how much harder each next one is. */
const SOFTEST = 8
const HARDER = 1.6

const molesOf = (
  { formulas, gibbs }: GasProblem,
  potentials: Float64Array,
  total: number,
  hardness: number,
): Float64Array =>
  gibbs.map((g, i) => total * Math.exp(dot(formulas[i] as Float64Array, potentials) - hardness * g))

/**
 * Equilibrium by element potentials: x_i = exp(Σ a_ij π_j − g_i) for every species, with π such that the atoms balance
 * and Σ x = 1 (Reynolds' element-potential method [bib:reynolds1986]).
 *
 * For a given total N the balances are the gradient of the convex function Σ n_i − Σ b_j π_j, so Newton's step,
 * shortened to ln(1 + d)/d of itself where d is the largest growth of any ln n_i that it asks for, can only lead down:
 * the curvature along it grows no faster than exp(t d), which is integrated. N then follows N ← Σ n_i, which brings ln N
 * at least twice nearer each time, since molecules of one to five atoms leave d ln Σn / d ln N below 0.45 (by
 * Cauchy–Schwarz); near the answer both are moved at once and the convergence is quadratic.
 *
 * Without a start the same gas is solved first with all Gibbs energies softened to a few R T and then ever harder: at
 * each stage the potentials grow in proportion, because the limit is a linear programme.
 */
export const gasEquilibrium = (
  problem: GasProblem,
  start: Pick<GasState, 'potentials' | 'total'> | null = null,
): GasOutcome => {
  const { formulas, gibbs, atoms } = problem
  const potentials = start === null ? new Float64Array(atoms.length) : Float64Array.from(start.potentials)
  let total = start === null ? atoms.reduce((sum, b) => sum + b, 0) / 2 : start.total
  const largest = gibbs.reduce((most, g) => Math.max(most, Math.abs(g)), 0)
  let hardness = start === null ? Math.min(1, SOFTEST / largest) : 1
  let last = false

  for (let steps = 0; steps < MOST_STEPS; steps++) {
    const moles = molesOf(problem, potentials, total, hardness)
    const linearisation = linearise(formulas, atoms, moles)
    const state = { potentials, total, moles, steps }
    if (linearisation === null) return { ok: false, state }
    if (last) return { ok: true, state, linearisation }
    const { supply, makeup, toElements, held, solve } = linearisation

    const move = solve(supply.map((c, j) => c - (held[j] as number)))
    let growth = makeup.reduce((most, row) => Math.max(most, dot(row, move)), 0)
    let ofTotal = 0
    if (growth < NEAR) {
      const perTotal = solve(held)
      const sum = moles.reduce((s, n) => s + n, 0)
      const expected = Math.max(0.1 * sum, sum + dot(held, move))
      ofTotal = (Math.log(expected / total) * sum) / dot(held, perTotal)
      for (let j = 0; j < move.length; j++) move[j] = (move[j] as number) - ofTotal * (perTotal[j] as number)
      growth = makeup.reduce((most, row) => Math.max(most, dot(row, move) + ofTotal), 0)
    }
    const change = makeup.reduce(
      (most, row) => Math.max(most, Math.abs(dot(row, move) + ofTotal)),
      Math.abs(ofTotal),
    )
    if (!Number.isFinite(change)) return { ok: false, state }
    const share = growth > 1e-6 ? Math.log1p(growth) / growth : 1
    for (let j = 0; j < potentials.length; j++)
      potentials[j] = (potentials[j] as number) + share * dot(toElements[j] as Float64Array, move)
    total *= Math.exp(share * ofTotal)

    if (hardness < 1 && change < NEAR) {
      const next = Math.min(1, hardness * HARDER)
      for (let j = 0; j < potentials.length; j++)
        potentials[j] = ((potentials[j] as number) * next) / hardness
      hardness = next
    } else last = hardness === 1 && change < SETTLED
  }
  return {
    ok: false,
    state: { potentials, total, moles: molesOf(problem, potentials, total, 1), steps: MOST_STEPS },
  }
}
