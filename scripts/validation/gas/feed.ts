import { type Equilibrium, equilibriumAtEnthalpy } from '#science/gas/equilibrium.ts'
import { equilibriumRecords } from '#science/gas/equilibriumData.ts'
import { condensedRecords } from '#science/gas/speciesData.ts'
import { ELEMENTS, molarEnthalpy } from '#science/gas/thermo.ts'

const records = { ...equilibriumRecords, graphite: condensedRecords.graphite }
export type FeedSpecies = keyof typeof records
/** Moles of what goes in, and its temperature [K]. */
export interface Feed {
  readonly moles: Readonly<Partial<Record<FeedSpecies, number>>>
  readonly temperature: number
}

/** Atoms and enthalpy of feeds put together. */
const together = (...feeds: readonly Feed[]) => {
  const atoms = { C: 0, H: 0, O: 0, N: 0, Ar: 0 }
  let enthalpy = 0
  for (const { moles, temperature } of feeds)
    for (const [name, n] of Object.entries(moles) as [FeedSpecies, number][]) {
      const record = records[name]
      for (const element of ELEMENTS) atoms[element] += n * record.composition[element]
      enthalpy += n * molarEnthalpy(record, temperature)
    }
  return { atoms, enthalpy }
}

/** Moles of oxygen that burn the feed to CO2 and H2O. */
const oxygenNeed = (moles: Feed['moles']): number => {
  const { C, H, O } = together({ moles, temperature: 298.15 }).atoms
  return C + H / 4 - O / 2
}

const STANDARD_ATMOSPHERE = 101325

/** The adiabatic flame of a fuel in air of 3.76 nitrogen to one oxygen, at an equivalence ratio. */
export const flameOf = (fuel: Feed['moles'], phi: number, temperature: number): Equilibrium => {
  const need = oxygenNeed(fuel)
  const air = { O2: need / phi, N2: (3.76 * need) / phi }
  const { atoms, enthalpy } = together({ moles: fuel, temperature }, { moles: air, temperature })
  const flame = equilibriumAtEnthalpy(enthalpy, STANDARD_ATMOSPHERE, atoms)
  if (!flame.ok) throw new Error(flame.sentence)
  return flame
}
