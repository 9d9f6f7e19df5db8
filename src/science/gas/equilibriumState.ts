import { MOLAR_GAS_CONSTANT, STANDARD_PRESSURE } from '#basis/constants.ts'
import { dot, type Linearisation } from './equilibriumComponents.ts'
import { EQUILIBRIUM_SPECIES, equilibriumRecords, FORMULAS } from './equilibriumData.ts'
import { type GasProblem, type GasState, gasEquilibrium } from './equilibriumPotentials.ts'
import { condensedRecords } from './speciesData.ts'
import { ELEMENTS, molarEnthalpy, molarGibbs, molarHeatCapacity } from './thermo.ts'

/** Equilibrium of one mole of atoms at one temperature and pressure. */
export interface AtomMoleState {
  /** In the order of `EQUILIBRIUM_SPECIES` [mol]. */
  readonly moles: Float64Array
  /** [mol] */
  readonly graphite: number
  /** Heats of formation included [J]. */
  readonly enthalpy: number
  /** At constant pressure with the equilibrium shifting along [J/K]. */
  readonly heatCapacity: number
  /** Largest share of any element that is missing or too much [1]. */
  readonly atomResidual: number
  /** Sum of the mole fractions less one [1]. */
  readonly fractionResidual: number
  readonly steps: number
  /** Where a search at a neighbouring temperature may start. */
  readonly start: PhaseStart
}

/** With graphite there, carbon's potential is graphite's and no unknown: the two searches differ in size. */
export interface PhaseStart {
  readonly withGraphite: Start | null
  readonly gasOnly: Start | null
}
type Start = Pick<GasState, 'potentials' | 'total'>

export const COLD_START: PhaseStart = { withGraphite: null, gasOnly: null }

const CARBON = ELEMENTS.indexOf('C')
const RECORDS = EQUILIBRIUM_SPECIES.map((name) => equilibriumRecords[name])
const carbonIn = (species: number): number => FORMULAS[species]?.[CARBON] as number

interface PhaseProblem {
  readonly gas: GasProblem
  /** Index of each of its species among all. */
  readonly species: readonly number[]
  /** Index of each of its elements among all; without carbon where graphite sets carbon's potential. */
  readonly elements: readonly number[]
  readonly pinned: boolean
}

const phaseProblem = (
  temperature: number,
  pressure: number,
  atoms: readonly number[],
  pinned: boolean,
): PhaseProblem => {
  const there = (j: number): boolean => (atoms[j] as number) > 0
  const elements = ELEMENTS.map((_, j) => j).filter((j) => there(j) && !(pinned && j === CARBON))
  const species = EQUILIBRIUM_SPECIES.map((_, i) => i).filter((i) =>
    (FORMULAS[i] as readonly number[]).every((a, j) => a === 0 || there(j)),
  )
  const energy = 1 / (MOLAR_GAS_CONSTANT * temperature)
  const compression = Math.log(pressure / STANDARD_PRESSURE)
  const carbon = pinned ? molarGibbs(condensedRecords.graphite, temperature) : 0
  return {
    gas: {
      formulas: species.map((i) => Float64Array.from(elements, (j) => FORMULAS[i]?.[j] as number)),
      gibbs: Float64Array.from(
        species,
        (i) =>
          (molarGibbs(RECORDS[i] as (typeof RECORDS)[number], temperature) - carbonIn(i) * carbon) * energy +
          compression,
      ),
      atoms: Float64Array.from(elements, (j) => atoms[j] as number),
    },
    species,
    elements,
    pinned,
  }
}

/** The gas at rest, with the graphite beside it that the carbon balance asks for: below zero where there is too little. */
interface Phases {
  readonly problem: PhaseProblem
  readonly state: GasState
  readonly linearisation: Linearisation | null
  readonly graphite: number
}

const settlePhases = (
  temperature: number,
  pressure: number,
  atoms: readonly number[],
  pinned: boolean,
  start: Start | null,
): Phases | null => {
  const problem = phaseProblem(temperature, pressure, atoms, pinned)
  const graphiteBeside = (moles: Float64Array): number =>
    problem.species.reduce(
      (left, i, k) => left - carbonIn(i) * (moles[k] as number),
      pinned ? (atoms[CARBON] as number) : 0,
    )
  if (problem.elements.length === 0) {
    const state = { potentials: new Float64Array(0), total: 0, moles: new Float64Array(0), steps: 0 }
    return { problem, state, linearisation: null, graphite: graphiteBeside(state.moles) }
  }
  const outcome = gasEquilibrium(problem.gas, start)
  if (!outcome.ok) return null
  const { state, linearisation } = outcome
  return { problem, state, linearisation, graphite: pinned ? graphiteBeside(state.moles) : 0 }
}

/** Share of the carbon below which a graphite balance that comes out negative is rounding. */
const GRAPHITE_ROUNDING = 1e-13

/**
 * Equilibrium of atoms that add up to one mole. By convexity there is one answer: with graphite where the balance
 * leaves carbon over beside a gas whose carbon has graphite's potential, and all gas otherwise. The likelier of the
 * two is tried first. Null when the search did not settle.
 */
export const settle = (
  temperature: number,
  pressure: number,
  atoms: readonly number[],
  mayForm: boolean,
  start: PhaseStart,
): AtomMoleState | null => {
  const carbon = atoms[CARBON] as number
  const oxygen = atoms[ELEMENTS.indexOf('O')] as number
  const mayCondense = mayForm && carbon > 0
  const unlikely = 2 * carbon <= oxygen
  let steps = 0
  let { gasOnly, withGraphite } = start

  const tryGas = (): Phases | null => {
    const phases = settlePhases(temperature, pressure, atoms, false, gasOnly)
    gasOnly = phases?.state ?? null
    steps += phases?.state.steps ?? 0
    return phases
  }
  const tryGraphite = (): Phases | null => {
    const phases = settlePhases(temperature, pressure, atoms, true, withGraphite)
    withGraphite = phases?.state ?? null
    steps += phases?.state.steps ?? 0
    return phases
  }
  const oversaturated = ({ problem, state }: Phases): boolean =>
    (state.potentials[problem.elements.indexOf(CARBON)] as number) * MOLAR_GAS_CONSTANT * temperature >
    molarGibbs(condensedRecords.graphite, temperature)

  let phases: Phases | null
  if (!mayCondense) phases = tryGas()
  else if (unlikely) {
    phases = tryGas()
    if (phases !== null && oversaturated(phases)) phases = tryGraphite()
  } else {
    phases = tryGraphite()
    if (phases !== null && phases.graphite < -GRAPHITE_ROUNDING * carbon) phases = tryGas()
  }
  return phases === null ? null : describe(temperature, atoms, phases, steps, { gasOnly, withGraphite })
}

const describe = (
  temperature: number,
  atoms: readonly number[],
  phases: Phases,
  steps: number,
  start: PhaseStart,
): AtomMoleState => {
  const { problem, state, linearisation } = phases
  const graphite = Math.max(0, phases.graphite)
  const carbon = condensedRecords.graphite
  const carbonEnthalpy = molarEnthalpy(carbon, temperature)
  const moles = new Float64Array(EQUILIBRIUM_SPECIES.length)
  const energy = 1 / (MOLAR_GAS_CONSTANT * temperature)

  let enthalpy = graphite * carbonEnthalpy
  let heatCapacity = graphite * molarHeatCapacity(carbon, temperature)
  let sum = 0
  // What one mole more of a species takes up, the graphite it is made of given back [J/mol].
  const taken = problem.species.map((i, k) => {
    const record = RECORDS[i] as (typeof RECORDS)[number]
    const n = state.moles[k] as number
    const h = molarEnthalpy(record, temperature)
    moles[i] = n
    sum += n
    enthalpy += n * h
    heatCapacity += n * molarHeatCapacity(record, temperature)
    return h - (problem.pinned ? carbonIn(i) * carbonEnthalpy : 0)
  })
  if (linearisation !== null) heatCapacity += shiftHeat(taken, state, linearisation, energy)

  let atomResidual = 0
  for (const [j, b] of atoms.entries()) {
    if (b === 0) continue
    let held = j === CARBON ? graphite : 0
    for (const [i, n] of moles.entries()) held += (FORMULAS[i]?.[j] as number) * n
    atomResidual = Math.max(atomResidual, Math.abs(held - b) / b)
  }
  const fractionResidual = state.total > 0 ? sum / state.total - 1 : 0
  return { moles, graphite, enthalpy, heatCapacity, atomResidual, fractionResidual, steps, start }
}

/**
 * Heat that the shift of the equilibrium takes up as the temperature rises [J/K]. With d ln n_i = a_i·dπ + h_i/(R T²) dT
 * + d ln N, and dπ and d ln N such that atoms and mole fractions still balance.
 */
const shiftHeat = (
  taken: readonly number[],
  { moles }: GasState,
  { makeup, held, solve }: Linearisation,
  energy: number,
): number => {
  // Per relative rise of temperature, d ln T, so that all terms are of order one.
  const pull = new Float64Array(held.length)
  let pullOfTotal = 0
  taken.forEach((h, i) => {
    const strength = (moles[i] as number) * h * energy
    pullOfTotal += strength
    for (let j = 0; j < pull.length; j++)
      pull[j] = (pull[j] as number) + strength * ((makeup[i] as Float64Array)[j] as number)
  })
  const perTotal = solve(held)
  const perPull = solve(pull)
  const total = (pullOfTotal - dot(held, perPull)) / dot(held, perTotal)
  const potentials = perPull.map((x, j) => -x - total * (perTotal[j] as number))
  let heat = 0
  taken.forEach((h, i) => {
    const growth = dot(makeup[i] as Float64Array, potentials) + h * energy + total
    heat += (moles[i] as number) * h * energy * growth
  })
  return heat * MOLAR_GAS_CONSTANT
}
