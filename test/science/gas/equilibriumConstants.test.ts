import { describe, expect, test } from 'vitest'
import { STANDARD_PRESSURE } from '#basis/constants.ts'
import janaf from '#reference/janaf.json' with { type: 'json' }
import { type Atoms, equilibriumAt } from '#science/gas/equilibrium.ts'
import type { EquilibriumSpecies } from '#science/gas/equilibriumData.ts'
import { expectWithin, knownMissesOf, relativeMiss } from '../outsideCheck.ts'

const logKf = (species: keyof typeof janaf.tables, T: number): number =>
  janaf.tables[species].rows.find((row) => row[0] === T)?.[7] as number

/** A reaction among gases, and graphite where it takes part: powers of the mole fractions at 1 bar. */
interface Reaction {
  readonly name: string
  readonly powers: Readonly<Partial<Record<EquilibriumSpecies & keyof typeof janaf.tables, number>>>
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

const cases = reactions.flatMap((reaction) =>
  [500, 800, 1000, 1500, 1800, 2000].map((T) => ({ ...reaction, T })),
)

describe('constants from the log Kf of NIST-JANAF (1998), read back from whole equilibrium compositions, 1 %', () => {
  const met = new Set<string>()
  test.each(cases)('$name at $T K', ({ name, powers, atoms, T }) => {
    const mixture = equilibriumAt(T, STANDARD_PRESSURE, atoms)
    if (!mixture.ok) throw new Error(mixture.sentence)
    let logK = 0
    let expected = 0
    for (const [species, power] of Object.entries(powers) as [keyof typeof powers, number][]) {
      logK += power * Math.log10(mixture.moles[species] / mixture.gasMoles)
      expected += power * logKf(species, T)
    }
    const check = `equilibrium constant of ${name} at ${T} K`
    met.add(check)
    expectWithin(check, relativeMiss(10 ** logK, 10 ** expected), 0.01)
  })

  test('every known miss was met', () => {
    expect(knownMissesOf('equilibrium constant').filter((check) => !met.has(check))).toEqual([])
  })
})
