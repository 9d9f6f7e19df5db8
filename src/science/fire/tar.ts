import { MOLAR_GAS_CONSTANT, REFERENCE_TEMPERATURE } from '#basis/constants.ts'
import { higherHeatingValue, type UltimateAnalysis } from '#science/fuel/composition.ts'
import { condensedRecords, gasRecords } from '#science/gas/speciesData.ts'
import { ATOMIC_MASS, molarEnthalpy } from '#science/gas/thermo.ts'

/**
 * Enthalpy of formation of a CHO(N) substance from its higher heating value; products CO2, liquid water, N2 [J/kg].
 * `carbon` and `hydrogen` are mass fractions.
 */
export const formationEnthalpy = (higher: number, carbon: number, hydrogen: number): number =>
  higher +
  (carbon / ATOMIC_MASS.C) * molarEnthalpy(gasRecords.CO2, REFERENCE_TEMPERATURE) +
  (hydrogen / ATOMIC_MASS.H / 2) * molarEnthalpy(condensedRecords.liquidWater, REFERENCE_TEMPERATURE)

/** The tar lump CH1.2O0.2, from memory: between the oils of slow pyrolysis and the aromatics of hot tar. */
export const TAR_ATOMS = { C: 1, H: 1.2, O: 0.2 } as const
/** [kg/mol] */
export const TAR_MOLAR_MASS =
  TAR_ATOMS.C * ATOMIC_MASS.C + TAR_ATOMS.H * ATOMIC_MASS.H + TAR_ATOMS.O * ATOMIC_MASS.O

const TAR_ANALYSIS: UltimateAnalysis = {
  C: (TAR_ATOMS.C * ATOMIC_MASS.C) / TAR_MOLAR_MASS,
  H: (TAR_ATOMS.H * ATOMIC_MASS.H) / TAR_MOLAR_MASS,
  O: (TAR_ATOMS.O * ATOMIC_MASS.O) / TAR_MOLAR_MASS,
  N: 0,
  S: 0,
  ash: 0,
}

/**
 * Tar vapour as a NASA polynomial. Heat capacity 0.40 + 2.9e-3 T − 0.9e-6 T² kJ/(kg K), close to phenol vapour at 300
 * and 1000 K (from memory); 298–1600 K. Its heat of formation follows from the heating value of its composition; the
 * heat of vaporisation is within that correlation's error.
 */
export const tarRecord = (() => {
  const scale = TAR_MOLAR_MASS / MOLAR_GAS_CONSTANT
  const [a1, a2, a3] = [400 * scale, 2.9 * scale, -0.9e-3 * scale]
  const T = REFERENCE_TEMPERATURE
  const sensible = a1 * T + (a2 * T ** 2) / 2 + (a3 * T ** 3) / 3
  const formation = formationEnthalpy(higherHeatingValue(TAR_ANALYSIS), TAR_ANALYSIS.C, TAR_ANALYSIS.H)
  const terms = [a1, a2, a3, 0, 0, formation * scale - sensible, 0]
  return { low: terms, high: terms }
})()

/** Oxygen that burns a mole of tar [mol]. */
export const TAR_OXYGEN = TAR_ATOMS.C + TAR_ATOMS.H / 4 - TAR_ATOMS.O / 2
