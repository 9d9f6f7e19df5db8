import { MOLAR_GAS_CONSTANT } from '#basis/constants.ts'
import { type SpeciesRecord, condensedRecords, gasRecords } from './speciesData.ts'

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

/**
 * Equilibrium constant of CO + H2O ⇌ CO2 + H2 from the Gibbs energies of the four gases [1].
 * 200–6000 K; the numbers of moles are equal, so no pressure enters.
 */
export const shiftConstant = (temperature: number): number => {
  const g = (name: GasSpecies): number => molarGibbs(gasRecords[name], temperature)
  return Math.exp(-(g('CO2') + g('H2') - g('CO') - g('H2O')) / (MOLAR_GAS_CONSTANT * temperature))
}

/** Enthalpy of liquid water, heat of formation included, 273.15–600 K [J/kg]. */
export const liquidWaterEnthalpy = (temperature: number): number =>
  molarEnthalpy(condensedRecords.liquidWater, temperature) / molarMassOf(condensedRecords.liquidWater)

/** Sensible enthalpy of graphite above 298.15 K, the stand-in for hot char [J/kg]. */
export const graphiteSensibleEnthalpy = (temperature: number): number =>
  (molarEnthalpy(condensedRecords.graphite, temperature) -
    molarEnthalpy(condensedRecords.graphite, 298.15)) /
  molarMassOf(condensedRecords.graphite)
