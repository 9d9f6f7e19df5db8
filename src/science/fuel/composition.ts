import { AIR_MOLES } from '#science/gas/blend.ts'
import { ATOMIC_MASS } from '#science/gas/thermo.ts'

/** Ultimate analysis, mass fractions of the dry fuel; they need not add up to exactly 1 as published. */
export interface UltimateAnalysis {
  readonly C: number
  readonly H: number
  readonly O: number
  readonly N: number
  readonly S: number
  readonly ash: number
}

/**
 * Higher heating value from the analysis, dry basis [J/kg]. Channiwala & Parikh, Fuel 81 (2002) 1051, eq. for solid,
 * liquid and gaseous fuels; mean absolute error 1.45 % over C 0–92, H 0.4–25, O 0–50, N 0–5.6, S 0–94, ash 0–71 wt %
 * [bib:channiwala2002].
 */
export const higherHeatingValue = ({ C, H, O, N, S, ash }: UltimateAnalysis): number =>
  1e8 * (0.3491 * C + 1.1783 * H + 0.1005 * S - 0.1034 * O - 0.0151 * N - 0.0211 * ash)

/** Heat of vaporisation of water at 25 °C, as test practice uses it [J/kg]; water made by a kilogram of hydrogen [kg]. */
const VAPORISATION = 2.442e6
const WATER_PER_HYDROGEN = 8.936

/** Lower heating value of the dry fuel [J/kg]. */
export const lowerHeatingValue = (higher: number, hydrogen: number): number =>
  higher - VAPORISATION * WATER_PER_HYDROGEN * hydrogen

/** Lower heating value as fired, `moisture` on the wet basis 0–1, per kilogram of wet fuel [J/kg]. */
export const lowerHeatingValueAsFired = (lowerDry: number, moisture: number): number =>
  lowerDry * (1 - moisture) - VAPORISATION * moisture

/** Air that burns a kilogram of dry fuel completely [kg/kg]. */
export const stoichiometricAir = ({ C, H, O, S }: UltimateAnalysis): number => {
  const oxygen = C / ATOMIC_MASS.C + H / ATOMIC_MASS.H / 4 + S / 0.03206 - O / ATOMIC_MASS.O / 2
  return oxygen / AIR_MOLES.O2
}
