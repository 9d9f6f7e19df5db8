import { MOLAR_GAS_CONSTANT } from '#basis/constants.ts'
import { findRoot } from '#basis/numerics/bisectNewton.ts'
import { EQUILIBRIUM_SPECIES, type EquilibriumSpecies } from './equilibriumData.ts'
import { type AtomMoleState, COLD_START, settle } from './equilibriumState.ts'
import { ELEMENTS, type Element } from './thermo.ts'

/** Atoms of each element; what is not named is absent [mol]. */
export type Atoms = Readonly<Partial<Record<Element, number>>>

export interface Equilibrium {
  readonly ok: true
  /** [K] */
  readonly temperature: number
  /** [Pa] */
  readonly pressure: number
  /** Moles of each gas [mol]. */
  readonly moles: Readonly<Record<EquilibriumSpecies, number>>
  /** All gas together; 0 where carbon is all there is [mol]. */
  readonly gasMoles: number
  /** Solid carbon beside the gas [mol]. */
  readonly graphite: number
  readonly carbonForms: boolean
  /** Of gas and graphite, heats of formation included [J]. */
  readonly enthalpy: number
  /** At constant pressure, with the composition following the temperature [J/K]. */
  readonly heatCapacity: number
  readonly residuals: {
    /** Largest share of any element that is missing or too much; at most 1e-10 [1]. */
    readonly elements: number
    /** Sum of the mole fractions less one; at most 1e-10 [1]. */
    readonly moleFractions: number
    /** Enthalpy missed, over R T for each mole of atoms; at most 1e-8; 0 where the temperature was given [1]. */
    readonly enthalpy: number
  }
}

/**
 * `atoms`: negative, not finite or none. `carbon`: more carbon than gases can hold, with graphite ruled out.
 * `temperature`, `pressure`: outside the range. `enthalpy`: not finite. `cold`, `hot`: so little or so much enthalpy that the temperature
 * would be outside the range. `slow`: the search did not settle.
 */
export type NoEquilibriumReason =
  | 'atoms'
  | 'carbon'
  | 'temperature'
  | 'pressure'
  | 'enthalpy'
  | 'cold'
  | 'hot'
  | 'slow'

export interface NoEquilibrium {
  readonly ok: false
  readonly reason: NoEquilibriumReason
  /** For a person. */
  readonly sentence: string
}

export type EquilibriumOutcome = Equilibrium | NoEquilibrium

export interface EquilibriumOptions {
  /** False for a gas that has no time to form soot; true unless said. */
  readonly graphite?: boolean
}

/** Range of the search: the polynomials hold from 200 K, and above 3500 K species are missing that matter [K]. */
const EQUILIBRIUM_COLDEST = 200
const EQUILIBRIUM_HOTTEST = 3500
/** Pressures for which the gas is ideal enough [Pa]. */
const LOWEST_PRESSURE = 1e2
const HIGHEST_PRESSURE = 1e7

const RESIDUAL_LIMIT = 1e-10
const ENTHALPY_LIMIT = 1e-8

const failed = (reason: NoEquilibriumReason, sentence: string): NoEquilibrium => ({
  ok: false,
  reason,
  sentence,
})

/** Amounts for one mole of atoms in all at a pressure that will do, or why there are none. */
const perAtomMole = (
  atoms: Atoms,
  graphite: boolean,
  pressure: number,
): { readonly ok: true; readonly amounts: readonly number[]; readonly sum: number } | NoEquilibrium => {
  const given = ELEMENTS.map((element) => atoms[element] ?? 0)
  if (given.some((b) => !(b >= 0 && b < Number.POSITIVE_INFINITY)))
    return failed('atoms', 'Amounts of atoms must be finite and not below zero.')
  const sum = given.reduce((total, b) => total + b, 0)
  if (!(sum > 0 && sum < Number.POSITIVE_INFINITY))
    return failed('atoms', 'There are no atoms, or too many to count.')
  const { C = 0, H = 0, O = 0 } = atoms
  // Beyond this no mixture of CO and CH4 takes up the carbon; at the border only those two would be left.
  if (!graphite && C > 0 && C > (O + H / 4) * (1 - 1e-9))
    return failed('carbon', 'No gas can hold so much carbon; let graphite form.')
  if (!(pressure >= LOWEST_PRESSURE && pressure <= HIGHEST_PRESSURE))
    return failed('pressure', `The pressure must be ${LOWEST_PRESSURE} to ${HIGHEST_PRESSURE} Pa.`)
  return { ok: true, amounts: given.map((b) => b / sum), sum }
}

const SLOW = failed('slow', 'The search for equilibrium did not settle.')

const finished = (
  state: AtomMoleState,
  sum: number,
  temperature: number,
  pressure: number,
  enthalpyResidual: number,
): EquilibriumOutcome => {
  const { atomResidual, fractionResidual } = state
  const sound =
    atomResidual <= RESIDUAL_LIMIT &&
    Math.abs(fractionResidual) <= RESIDUAL_LIMIT &&
    enthalpyResidual <= ENTHALPY_LIMIT &&
    Number.isFinite(state.heatCapacity)
  if (!sound) return SLOW
  return {
    ok: true,
    temperature,
    pressure,
    moles: Object.fromEntries(
      EQUILIBRIUM_SPECIES.map((name, i) => [name, (state.moles[i] as number) * sum]),
    ) as Record<EquilibriumSpecies, number>,
    gasMoles: state.moles.reduce((total, n) => total + n, 0) * sum,
    graphite: state.graphite * sum,
    carbonForms: state.graphite > 0,
    enthalpy: state.enthalpy * sum,
    heatCapacity: state.heatCapacity * sum,
    residuals: { elements: atomResidual, moleFractions: fractionResidual, enthalpy: enthalpyResidual },
  }
}

/**
 * Chemical equilibrium of the ideal gases of `EQUILIBRIUM_SPECIES`, and of graphite unless ruled out, at a temperature
 * of 200–3500 K. Water stays a gas at any temperature.
 */
export const equilibriumAt = (
  temperature: number,
  pressure: number,
  elements: Atoms,
  { graphite = true }: EquilibriumOptions = {},
): EquilibriumOutcome => {
  const atoms = perAtomMole(elements, graphite, pressure)
  if (!atoms.ok) return atoms
  if (!(temperature >= EQUILIBRIUM_COLDEST && temperature <= EQUILIBRIUM_HOTTEST))
    return failed(
      'temperature',
      `The temperature must be ${EQUILIBRIUM_COLDEST} to ${EQUILIBRIUM_HOTTEST} K.`,
    )
  const state = settle(temperature, pressure, atoms.amounts, graphite, COLD_START)
  return state === null ? SLOW : finished(state, atoms.sum, temperature, pressure, 0)
}

/**
 * Chemical equilibrium of atoms that hold a given enthalpy: the adiabatic flame, when it is that of fuel and air before
 * they meet. `enthalpy` is that of all the atoms together, heats of formation included [J]. The enthalpy at equilibrium
 * rises with temperature, so there is one answer at most.
 */
export const equilibriumAtEnthalpy = (
  enthalpy: number,
  pressure: number,
  elements: Atoms,
  { graphite = true }: EquilibriumOptions = {},
): EquilibriumOutcome => {
  const atoms = perAtomMole(elements, graphite, pressure)
  if (!atoms.ok) return atoms
  if (!Number.isFinite(enthalpy)) return failed('enthalpy', 'The enthalpy must be a finite number.')
  const { amounts, sum } = atoms
  const wanted = enthalpy / sum
  let start = COLD_START
  const stateAt = (temperature: number): AtomMoleState | null => {
    const state = settle(temperature, pressure, amounts, graphite, start)
    if (state !== null) start = state.start
    return state
  }
  // In kelvin times gas constant, so that what the search sees is of the size of a temperature.
  const missed = (state: AtomMoleState): number => (state.enthalpy - wanted) / MOLAR_GAS_CONSTANT
  const root = findRoot(
    (temperature) => {
      const state = stateAt(temperature)
      if (state === null) return { value: Number.NaN, slope: Number.NaN }
      return { value: missed(state), slope: state.heatCapacity / MOLAR_GAS_CONSTANT }
    },
    { from: EQUILIBRIUM_COLDEST, to: EQUILIBRIUM_HOTTEST, tolerance: 0 },
  )
  if (!root.ok) {
    if (root.reason !== 'bracket') return SLOW
    return root.residual > 0
      ? failed('cold', `So little enthalpy means less than ${EQUILIBRIUM_COLDEST} K.`)
      : failed('hot', `So much enthalpy means more than ${EQUILIBRIUM_HOTTEST} K.`)
  }
  const state = stateAt(root.x)
  if (state === null) return SLOW
  return finished(state, sum, root.x, pressure, Math.abs(missed(state)) / root.x)
}
