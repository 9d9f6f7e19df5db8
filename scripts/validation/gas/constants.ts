import { STANDARD_PRESSURE } from '#basis/constants.ts'
import { type Atoms, equilibriumAt } from '#science/gas/equilibrium.ts'
import type { EquilibriumSpecies } from '#science/gas/equilibriumData.ts'
import type { CheckSet } from '../row.ts'
import { type JanafSpecies, janafLogKf } from './janaf.ts'

/** A reaction among gases, and graphite where it takes part: powers of the mole fractions at 1 bar. */
interface Reaction {
  readonly name: string
  readonly powers: Readonly<Partial<Record<EquilibriumSpecies & JanafSpecies, number>>>
  /** A mixture in which all of it is there. */
  readonly atoms: Atoms
}

const reactions: readonly Reaction[] = [
  {
    name: 'water-gas shift CO + H2O = CO2 + H2',
    powers: { CO: -1, H2O: -1, CO2: 1, H2: 1 },
    atoms: { C: 1, H: 2, O: 2.2, N: 4 },
  },
  { name: 'Boudouard C + CO2 = 2 CO', powers: { CO2: -1, CO: 2 }, atoms: { C: 3, H: 0.2, O: 2, N: 4 } },
  { name: 'CO + ½ O2 = CO2', powers: { CO: -1, O2: -0.5, CO2: 1 }, atoms: { C: 1, H: 2, O: 4, N: 4 } },
  { name: 'H2 + ½ O2 = H2O', powers: { H2: -1, O2: -0.5, H2O: 1 }, atoms: { C: 1, H: 2, O: 4, N: 4 } },
  { name: 'C + H2O = CO + H2', powers: { H2O: -1, CO: 1, H2: 1 }, atoms: { C: 4, H: 2, O: 2, N: 4 } },
  { name: 'C + 2 H2 = CH4', powers: { H2: -2, CH4: 1 }, atoms: { C: 4, H: 2, O: 0.5, N: 4 } },
]

export const constantSets: readonly CheckSet[] = [
  {
    title: 'equilibrium constants, read back from whole compositions at equilibrium',
    source: 'log K of formation of NIST-JANAF, 1998 [bib:chase1998]',
    standing: 'reference data',
    note: '1 % in K.',
    rows: () =>
      reactions.flatMap(({ name, powers, atoms }) =>
        [500, 800, 1000, 1500, 1800, 2000].map((T) => {
          const mixture = equilibriumAt(T, STANDARD_PRESSURE, atoms)
          if (!mixture.ok) throw new Error(mixture.sentence)
          let logK = 0
          let published = 0
          for (const [species, power] of Object.entries(powers) as [keyof typeof powers, number][]) {
            logK += power * Math.log10(mixture.moles[species] / mixture.gasMoles)
            published += power * janafLogKf(species, T)
          }
          return {
            check: `equilibrium constant of ${name} at ${T} K`,
            published: 10 ** published,
            ours: 10 ** logK,
            unit: '',
            allowed: { share: 0.01 },
          }
        }),
      ),
  },
]
