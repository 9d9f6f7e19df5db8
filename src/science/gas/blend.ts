import { MOLAR_GAS_CONSTANT } from '#basis/constants.ts'
import { gasRecords, type SpeciesRecord } from './speciesData.ts'
import { GAS_SPECIES, type GasSpecies, MOLAR_MASS } from './thermo.ts'

/**
 * A gas of fixed composition, its NASA polynomials summed once into one polynomial a kilogram, so that an
 * enthalpy costs the same for nine species as for one. Ideal gas, 200–3500 K.
 */
export interface Blend {
  /** Specific gas constant [J/(kg K)]. */
  readonly gasConstant: number
  /** Seven terms below 1000 K, seven above; cp in J/(kg K), h in J/kg as in `specificEnthalpy`. */
  readonly terms: Float64Array
}

/** Moles of each species in one kilogram of gas [mol/kg]. */
export type MolesPerKilogram = Readonly<Partial<Record<GasSpecies, number>>>

/** One extra species that is not in the table, such as the tar lump: its record and its moles. */
export interface ExtraSpecies {
  readonly record: Pick<SpeciesRecord, 'low' | 'high'>
  readonly moles: number
}

const addRecord = (terms: Float64Array, record: Pick<SpeciesRecord, 'low' | 'high'>, moles: number): void => {
  const scale = moles * MOLAR_GAS_CONSTANT
  for (let i = 0; i < 6; i++) {
    // Integration divisors of h are folded in, so that h = T·(t0 + T·(t1 + …)) + t5.
    const divisor = i < 5 ? i + 1 : 1
    terms[i] = (terms[i] as number) + (scale * (record.low[i] as number)) / divisor
    terms[7 + i] = (terms[7 + i] as number) + (scale * (record.high[i] as number)) / divisor
  }
}

/** Sums the species of one kilogram of gas. `moles` must add up to one kilogram together with `extra`. */
export const blendOf = (moles: MolesPerKilogram, extra: ExtraSpecies | null = null): Blend => {
  const terms = new Float64Array(14)
  let total = 0
  for (const name of GAS_SPECIES) {
    const n = moles[name] ?? 0
    if (n === 0) continue
    addRecord(terms, gasRecords[name], n)
    total += n
  }
  if (extra !== null) {
    addRecord(terms, extra.record, extra.moles)
    total += extra.moles
  }
  return { gasConstant: total * MOLAR_GAS_CONSTANT, terms }
}

/** Enthalpy, heats of formation included [J/kg]. */
export const specificEnthalpy = (blend: Blend, temperature: number): number =>
  termsEnthalpy(blend.terms, temperature)

/** Heat capacity at constant pressure [J/(kg K)]. */
export const specificHeat = (blend: Blend, temperature: number): number => termsHeat(blend.terms, temperature)

/** Enthalpy of whatever amount of gas the terms stand for [J]. */
export const termsEnthalpy = (terms: Float64Array, temperature: number): number => {
  const t = terms
  const o = temperature <= 1000 ? 0 : 7
  const T = temperature
  return (
    T *
      ((t[o] as number) +
        T *
          ((t[o + 1] as number) +
            T * ((t[o + 2] as number) + T * ((t[o + 3] as number) + T * (t[o + 4] as number))))) +
    (t[o + 5] as number)
  )
}

/** Heat capacity of it [J/K]. */
export const termsHeat = (terms: Float64Array, temperature: number): number => {
  const t = terms
  const o = temperature <= 1000 ? 0 : 7
  const T = temperature
  return (
    (t[o] as number) +
    T *
      (2 * (t[o + 1] as number) +
        T * (3 * (t[o + 2] as number) + T * (4 * (t[o + 3] as number) + T * 5 * (t[o + 4] as number))))
  )
}

/** Dry air, mole fractions of ISO 2533 / US Standard Atmosphere 1976 (CO2 314 ppm) [bib:ussa1976]. */
export const DRY_AIR_MOLE_FRACTIONS = { N2: 0.78084, O2: 0.209476, Ar: 0.00934, CO2: 0.000314 } as const

const airMass = (['N2', 'O2', 'Ar', 'CO2'] as const).reduce(
  (sum, name) => sum + DRY_AIR_MOLE_FRACTIONS[name] * MOLAR_MASS[name],
  0,
)

/** Moles of each gas in a kilogram of dry air [mol/kg]. */
export const AIR_MOLES: Readonly<Record<keyof typeof DRY_AIR_MOLE_FRACTIONS, number>> = {
  N2: DRY_AIR_MOLE_FRACTIONS.N2 / airMass,
  O2: DRY_AIR_MOLE_FRACTIONS.O2 / airMass,
  Ar: DRY_AIR_MOLE_FRACTIONS.Ar / airMass,
  CO2: DRY_AIR_MOLE_FRACTIONS.CO2 / airMass,
}

export const AIR: Blend = blendOf(AIR_MOLES)
