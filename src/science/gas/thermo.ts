import { MOLAR_GAS_CONSTANT, REFERENCE_TEMPERATURE } from '#basis/constants.ts'
import { condensedRecords, gasRecords, type SpeciesRecord } from './speciesData.ts'

/** Temperature at which the two ranges of every record meet [K]. */
const T_MEET = 1000

/** Standard atomic weights, conventional values of IUPAC 2021 [bib:prohaska2022] [kg/mol]. */
export const ATOMIC_MASS = { C: 0.012011, H: 0.001008, O: 0.015999, N: 0.014007, Ar: 0.03995 } as const

export type Element = keyof typeof ATOMIC_MASS
export const ELEMENTS = Object.keys(ATOMIC_MASS) as readonly Element[]

export type GasSpecies = keyof typeof gasRecords
export const GAS_SPECIES = Object.keys(gasRecords) as readonly GasSpecies[]

const molarMassOf = (record: SpeciesRecord): number =>
  ELEMENTS.reduce((sum, element) => sum + record.composition[element] * ATOMIC_MASS[element], 0)

/** [kg/mol] */
export const MOLAR_MASS = Object.fromEntries(
  GAS_SPECIES.map((name) => [name, molarMassOf(gasRecords[name])]),
) as Readonly<Record<GasSpecies, number>>

const coefficients = (record: SpeciesRecord, temperature: number): readonly number[] =>
  temperature <= T_MEET ? record.low : record.high

const at = (a: readonly number[], i: number): number => a[i] as number

/** Molar heat capacity at constant pressure, 1 bar, 200–6000 K [J/(mol K)]. */
export const molarHeatCapacity = (record: SpeciesRecord, temperature: number): number => {
  const a = coefficients(record, temperature)
  const T = temperature
  return MOLAR_GAS_CONSTANT * (at(a, 0) + T * (at(a, 1) + T * (at(a, 2) + T * (at(a, 3) + T * at(a, 4)))))
}

/** Molar enthalpy, heat of formation from the elements at 298.15 K included [J/mol]. */
export const molarEnthalpy = (record: SpeciesRecord, temperature: number): number => {
  const a = coefficients(record, temperature)
  const T = temperature
  const sensible =
    at(a, 0) + T * (at(a, 1) / 2 + T * (at(a, 2) / 3 + T * (at(a, 3) / 4 + (T * at(a, 4)) / 5)))
  return MOLAR_GAS_CONSTANT * (T * sensible + at(a, 5))
}

/** Molar entropy at 1 bar [J/(mol K)]. */
export const molarEntropy = (record: SpeciesRecord, temperature: number): number => {
  const a = coefficients(record, temperature)
  const T = temperature
  return (
    MOLAR_GAS_CONSTANT *
    (at(a, 0) * Math.log(T) +
      T * (at(a, 1) + T * (at(a, 2) / 2 + T * (at(a, 3) / 3 + (T * at(a, 4)) / 4))) +
      at(a, 6))
  )
}

/** Molar Gibbs energy at 1 bar [J/mol]. */
export const molarGibbs = (record: SpeciesRecord, temperature: number): number =>
  molarEnthalpy(record, temperature) - temperature * molarEntropy(record, temperature)

/** Terms of a reaction: the records of what it makes less those of what it takes. */
const reactionTerms = (range: 'low' | 'high'): readonly number[] =>
  gasRecords.CO2[range].map(
    (term, i) =>
      term + at(gasRecords.H2[range], i) - at(gasRecords.CO[range], i) - at(gasRecords.H2O[range], i),
  )
const SHIFT_LOW = reactionTerms('low')
const SHIFT_HIGH = reactionTerms('high')

/**
 * Natural logarithm of the equilibrium constant of CO + H2O ⇌ CO2 + H2, from the Gibbs energies of the four gases [1].
 * 200–6000 K; the numbers of moles are equal, so no pressure enters.
 */
export const logShiftConstant = (temperature: number): number => {
  const a = temperature <= T_MEET ? SHIFT_LOW : SHIFT_HIGH
  const T = temperature
  // −ΔG/(R T) with h/(R T) and s/R of the NASA form.
  return (
    at(a, 0) * (Math.log(T) - 1) +
    T * (at(a, 1) / 2 + T * (at(a, 2) / 6 + T * (at(a, 3) / 12 + (T * at(a, 4)) / 20))) -
    at(a, 5) / T +
    at(a, 6)
  )
}

/** The constant itself [1]. */
export const shiftConstant = (temperature: number): number => Math.exp(logShiftConstant(temperature))

/** Slope of its logarithm by van 't Hoff's equation, ΔH/(R T²) [1/K]. */
export const logShiftSlope = (temperature: number): number => {
  const a = temperature <= T_MEET ? SHIFT_LOW : SHIFT_HIGH
  const T = temperature
  return (
    at(a, 0) / T +
    at(a, 1) / 2 +
    T * (at(a, 2) / 3 + T * (at(a, 3) / 4 + (T * at(a, 4)) / 5)) +
    at(a, 5) / (T * T)
  )
}

/** Enthalpy of liquid water, heat of formation included, 273.15–600 K [J/kg]. */
export const liquidWaterEnthalpy = (temperature: number): number =>
  molarEnthalpy(condensedRecords.liquidWater, temperature) / molarMassOf(condensedRecords.liquidWater)

const GRAPHITE_MOLAR_MASS = molarMassOf(condensedRecords.graphite)
const GRAPHITE_REFERENCE = molarEnthalpy(condensedRecords.graphite, REFERENCE_TEMPERATURE)

/** Sensible enthalpy of graphite above 298.15 K, the stand-in for hot char; 200–5000 K [J/kg]. */
export const graphiteSensibleEnthalpy = (temperature: number): number =>
  (molarEnthalpy(condensedRecords.graphite, temperature) - GRAPHITE_REFERENCE) / GRAPHITE_MOLAR_MASS

/** Heat capacity of graphite [J/(kg K)]. */
export const graphiteHeat = (temperature: number): number =>
  molarHeatCapacity(condensedRecords.graphite, temperature) / GRAPHITE_MOLAR_MASS
