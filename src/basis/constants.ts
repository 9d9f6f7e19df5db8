/**
 * Constants of nature and of convention, in three groups: defined (exact), measured (with the edition), and derived
 * here from the others.
 */

// Defined: exact by decision of the General Conference on Weights and Measures or of a standard.

/** Boltzmann constant k, SI Brochure 9th edition, table 1 [bib:bipm2019] [J/K]. */
export const BOLTZMANN_CONSTANT = 1.380649e-23

/** Avogadro constant, SI Brochure 9th edition, table 1 [bib:bipm2019] [1/mol]. */
export const AVOGADRO_CONSTANT = 6.02214076e23

/** Planck constant h, SI Brochure 9th edition, table 1 [bib:bipm2019] [J s]. */
export const PLANCK_CONSTANT = 6.62607015e-34

/** Speed of light in vacuum c, SI Brochure 9th edition, table 1 [bib:bipm2019] [m/s]. */
export const SPEED_OF_LIGHT = 299_792_458

/** Standard acceleration of free fall, 3rd CGPM 1901, in [bib:thompson2008] appendix B.8 [m/s²]. */
export const STANDARD_GRAVITY = 9.80665

/** Standard atmosphere, 10th CGPM 1954; sea level of the standard atmosphere of ISO 2533 [Pa]. */
export const STANDARD_ATMOSPHERE = 101_325

/** Standard-state pressure of thermochemical tables, IUPAC since 1982 (1 bar) [Pa]. */
export const STANDARD_PRESSURE = 100_000

/** Zero of the Celsius scale; with `STANDARD_ATMOSPHERE` the state of a normal cubic metre, Nm³ [K]. */
export const NORMAL_TEMPERATURE = 273.15

/** Reference temperature of thermochemical tables: heats of formation and heating values [K]. */
export const REFERENCE_TEMPERATURE = 298.15

/** Sea-level temperature of the standard atmosphere, ISO 2533:1975 [K]. */
export const STANDARD_TEMPERATURE = 288.15

// Measured: with the edition the value is from.

/**
 * Molar mass of dry air with 400 ppm carbon dioxide, CIPM-2007, table 1 [bib:picard2008] [kg/mol].
 * Each 100 ppm more adds 1.2 mg/mol, which no stove can feel.
 */
export const DRY_AIR_MOLAR_MASS = 28.96546e-3

// Derived here.

/** Molar gas constant R = k N_A [J/(mol K)]. */
export const MOLAR_GAS_CONSTANT = BOLTZMANN_CONSTANT * AVOGADRO_CONSTANT

/** Stefan–Boltzmann constant σ = 2 π⁵ k⁴ / (15 h³ c²) [W/(m² K⁴)]. */
export const STEFAN_BOLTZMANN_CONSTANT =
  (2 * Math.PI ** 5 * BOLTZMANN_CONSTANT ** 4) / (15 * PLANCK_CONSTANT ** 3 * SPEED_OF_LIGHT ** 2)

/** Specific gas constant of dry air, R / M [J/(kg K)]. */
export const DRY_AIR_GAS_CONSTANT = MOLAR_GAS_CONSTANT / DRY_AIR_MOLAR_MASS
