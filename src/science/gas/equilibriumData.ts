import { gasRecords, type SpeciesRecord } from './speciesData.ts'
import { ELEMENTS } from './thermo.ts'

/**
 * NASA seven-coefficient polynomials of the radicals that matter in a flame, and of nitric oxide. They stay out of
 * `gasRecords` so that the blends of the quick path sum no species that a stove's gas does not carry.
 * McBride, Gordon & Reno, NASA TM-4513 (1993) [bib:mcbride1993]; valid 200–6000 K, pressure 1 bar.
 */
const radicalRecords = {
  OH: {
    composition: { C: 0, H: 1, O: 1, N: 0, Ar: 0 },
    low: [3.99201543, -0.00240131752, 4.61793841e-6, -3.88113333e-9, 1.3641147e-12, 3615.08056, -0.103925458],
    high: [
      2.83864607, 0.00110725586, -2.93914978e-7, 4.20524247e-11, -2.42169092e-15, 3943.95852, 5.84452662,
    ],
  },
  H: {
    composition: { C: 0, H: 1, O: 0, N: 0, Ar: 0 },
    low: [2.5, 0.0, 0.0, 0.0, 0.0, 25473.6599, -0.446682853],
    high: [
      2.50000286, -5.65334214e-9, 3.63251723e-12, -9.1994972e-16, 7.95260746e-20, 25473.6589, -0.446698494,
    ],
  },
  O: {
    composition: { C: 0, H: 0, O: 1, N: 0, Ar: 0 },
    low: [3.1682671, -0.00327931884, 6.64306396e-6, -6.12806624e-9, 2.11265971e-12, 29122.2592, 2.05193346],
    high: [2.54363697, -2.73162486e-5, -4.1902952e-9, 4.95481845e-12, -4.79553694e-16, 29226.012, 4.92229457],
  },
  NO: {
    composition: { C: 0, H: 0, O: 1, N: 1, Ar: 0 },
    low: [4.21859896, -0.00463988124, 1.10443049e-5, -9.34055507e-9, 2.80554874e-12, 9845.09964, 2.28061001],
    high: [
      3.26071234, 0.00119101135, -4.29122646e-7, 6.94481463e-11, -4.03295681e-15, 9921.43132, 6.36900518,
    ],
  },
} as const satisfies Record<string, SpeciesRecord>

/** Every gas that may be there at equilibrium. */
export const equilibriumRecords = { ...gasRecords, ...radicalRecords }

export type EquilibriumSpecies = keyof typeof equilibriumRecords
export const EQUILIBRIUM_SPECIES = Object.keys(equilibriumRecords) as readonly EquilibriumSpecies[]

/** Atoms of each element, in the order of `ELEMENTS`, in each gas, in the order of `EQUILIBRIUM_SPECIES`. */
export const FORMULAS: readonly (readonly number[])[] = EQUILIBRIUM_SPECIES.map((name) =>
  ELEMENTS.map((element) => equilibriumRecords[name].composition[element]),
)
