import type { Front } from '#science/fire/front.ts'
import type { Fuel } from '#science/fuel/table.ts'

/**
 * Elements and enthalpy of a front added up from its moles by their formulas, with the composition of tar and char
 * as the model's comments state it. Nothing here calls the front's own arithmetic.
 */
export type Element = 'C' | 'H' | 'O' | 'N' | 'Ar'

/** Conventional atomic weights, IUPAC 2021 [bib:prohaska2022] [kg/mol]. */
const WEIGHT: Readonly<Record<Element, number>> = {
  C: 12.011e-3,
  H: 1.008e-3,
  O: 15.999e-3,
  N: 14.007e-3,
  Ar: 39.95e-3,
}

type Formula = Readonly<Partial<Record<Element, number>>>

const FORMULAS: Readonly<Record<keyof Front['moles'], Formula>> = {
  CO: { C: 1, O: 1 },
  CO2: { C: 1, O: 2 },
  H2: { H: 2 },
  H2O: { H: 2, O: 1 },
  CH4: { C: 1, H: 4 },
  N2: { N: 2 },
  Ar: { Ar: 1 },
  tar: { C: 1, H: 1.2, O: 0.2 },
}

/** Char without ash, shares of its mass. */
const CHAR: Formula = { C: 0.915, H: 0.025, O: 0.057, N: 0.003 }

/** Dry air of ISO 2533 and the US Standard Atmosphere 1976 [bib:ussa1976], mole fractions. */
const AIR: readonly { readonly share: number; readonly formula: Formula }[] = [
  { share: 0.78084, formula: { N: 2 } },
  { share: 0.209476, formula: { O: 2 } },
  { share: 0.00934, formula: { Ar: 1 } },
  { share: 0.000314, formula: { C: 1, O: 2 } },
]

const ELEMENTS: readonly Element[] = ['C', 'H', 'O', 'N', 'Ar']
const weightOf = (formula: Formula): number =>
  ELEMENTS.reduce((sum, element) => sum + (formula[element] ?? 0) * WEIGHT[element], 0)

/** Moles of each element that go in, a kilogram of dry fuel: fuel, its water, primary air. */
export const elementsIn = (fuel: Fuel, moisture: number, airPerFuel: number): Record<Element, number> => {
  const { C, H, N, S, ash } = fuel.analysis
  // Oxygen by difference; sulphur goes with nitrogen.
  const dry: Readonly<Record<Element, number>> = { C, H, N: N + S, O: 1 - C - H - N - S - ash, Ar: 0 }
  const water = moisture / (1 - moisture) / weightOf({ H: 2, O: 1 })
  const airMoles = airPerFuel / AIR.reduce((sum, { share, formula }) => sum + share * weightOf(formula), 0)
  const inAir = (element: Element): number =>
    airMoles * AIR.reduce((sum, { share, formula }) => sum + share * (formula[element] ?? 0), 0)
  const inWater: Formula = { H: 2 * water, O: water }
  return Object.fromEntries(
    ELEMENTS.map((element) => [
      element,
      dry[element] / WEIGHT[element] + (inWater[element] ?? 0) + inAir(element),
    ]),
  ) as Record<Element, number>
}

/** Moles of each element that come out: gas, tar, char. */
export const elementsOut = (fuel: Fuel, front: Front): Record<Element, number> => {
  const species = Object.keys(FORMULAS) as (keyof Front['moles'])[]
  return Object.fromEntries(
    ELEMENTS.map((element) => [
      element,
      species.reduce((sum, name) => sum + front.moles[name] * (FORMULAS[name][element] ?? 0), 0) +
        ((front.char - fuel.analysis.ash) * (CHAR[element] ?? 0)) / WEIGHT[element],
    ]),
  ) as Record<Element, number>
}

/** Mass of the gas from its moles [kg/kg dry fuel]. */
export const gasMass = (front: Front): number =>
  (Object.keys(FORMULAS) as (keyof Front['moles'])[]).reduce(
    (sum, name) => sum + front.moles[name] * weightOf(FORMULAS[name]),
    0,
  )

/** Oxygen that burns the gas [mol/kg dry fuel]. */
export const oxygenNeed = ({ moles }: Front): number =>
  moles.CO / 2 + moles.H2 / 2 + 2 * moles.CH4 + (1 + 1.2 / 4 - 0.2 / 2) * moles.tar

export const AIR_OXYGEN_SHARE = 0.209476
export const AIR_MOLAR_MASS = AIR.reduce((sum, { share, formula }) => sum + share * weightOf(formula), 0)
