import { describe, expect, test } from 'vitest'
import janaf from '#reference/janaf.json' with { type: 'json' }
import { condensedRecords, gasRecords, type SpeciesRecord } from '#science/gas/speciesData.ts'
import { molarEnthalpy, molarEntropy, molarHeatCapacity, shiftConstant } from '#science/gas/thermo.ts'
import { expectWithin, knownMissesOf, relativeMiss } from '../outsideCheck.ts'

const records: Readonly<Record<keyof typeof janaf.tables, SpeciesRecord>> = {
  ...gasRecords,
  graphite: condensedRecords.graphite,
}

/** The tolerances of the plan: polynomials of another edition, H2O with another treatment of its rotation. */
const toleranceOf = (species: string): number => (species === 'H2O' ? 0.02 : 0.005)

/** Rounding of the table's last digit. */
const HALF_DIGIT = 0.0005

interface Row {
  readonly species: keyof typeof janaf.tables
  readonly T: number
  readonly cp: number
  readonly s: number
  readonly sensible: number
}

const rows: readonly Row[] = (Object.keys(janaf.tables) as (keyof typeof janaf.tables)[]).flatMap((species) =>
  janaf.tables[species].rows
    // The polynomials leave JANAF by design for CH4 above 1000 K.
    .filter(([T]) => species !== 'CH4' || (T as number) < 1000)
    .map((row) => {
      const [T, cp, s, , sensible] = row as [number, number, number, number, number]
      return { species, T, cp, s, sensible }
    }),
)

describe('NIST-JANAF tables, 4th edition (1998)', () => {
  const met = new Set<string>()
  const check = (name: string, miss: number, tolerance: number): void => {
    met.add(name)
    expectWithin(name, miss, tolerance)
  }

  test.each(rows)('cp of $species at $T K', ({ species, T, cp }) => {
    check(
      `JANAF ${species} cp ${T} K`,
      relativeMiss(molarHeatCapacity(records[species], T), cp),
      toleranceOf(species),
    )
  })

  test.each(rows)('entropy of $species at $T K', ({ species, T, s }) => {
    check(
      `JANAF ${species} s ${T} K`,
      relativeMiss(molarEntropy(records[species], T), s),
      toleranceOf(species),
    )
  })

  test.each(rows.filter(({ T }) => T !== 298.15))(
    'enthalpy of $species at $T K',
    ({ species, T, sensible }) => {
      const record = records[species]
      const computed = (molarEnthalpy(record, T) - molarEnthalpy(record, 298.15)) / 1000
      const miss = Math.max(0, Math.abs(computed - sensible) - HALF_DIGIT) / Math.abs(sensible)
      check(`JANAF ${species} h ${T} K`, miss, toleranceOf(species))
    },
  )

  test.each(['CO2', 'CO', 'H2O', 'CH4'] as const)('heat of formation of %s', (species) => {
    const row = janaf.tables[species].rows.find(([T]) => T === 298.15) as number[]
    expectWithin(
      `JANAF ${species} heat of formation`,
      relativeMiss(molarEnthalpy(gasRecords[species], 298.15) / 1000, row[5] as number),
      0.005,
    )
  })

  test('elements have none', () => {
    // Half a digit of JANAF's kJ/mol.
    for (const species of ['N2', 'O2', 'Ar', 'H2', 'graphite'] as const)
      expect(Math.abs(molarEnthalpy(records[species], 298.15))).toBeLessThan(0.5)
  })

  test('every known miss was met', () => {
    expect(knownMissesOf('JANAF').filter((name) => !met.has(name))).toEqual([])
  })
})

describe('water-gas shift from the log K of formation of NIST-JANAF', () => {
  const logKf = (species: 'CO' | 'H2O' | 'CO2', T: number): number =>
    janaf.tables[species].rows.find((row) => row[0] === T)?.[7] as number

  // The third decimal of log K is 0.1 % of K each; the plan allows 1 %.
  test.each([500, 800, 1000, 1500, 1800, 2000])('at %d K', (T) => {
    const K = 10 ** (logKf('CO2', T) - logKf('CO', T) - logKf('H2O', T))
    expectWithin(`shift constant at ${T} K`, relativeMiss(shiftConstant(T), K), 0.01)
  })
})

describe('lower heating values from the heats of formation of NIST-JANAF', () => {
  const formation = (species: 'CO' | 'H2O' | 'CO2' | 'CH4'): number =>
    janaf.tables[species].rows.find((row) => row[0] === 298.15)?.[5] as number
  const ours = (species: keyof typeof gasRecords): number => molarEnthalpy(gasRecords[species], 298.15) / 1000

  test.each([
    { gas: 'H2', expected: -formation('H2O'), computed: ours('H2') + ours('O2') / 2 - ours('H2O') },
    {
      gas: 'CO',
      expected: formation('CO') - formation('CO2'),
      computed: ours('CO') + ours('O2') / 2 - ours('CO2'),
    },
    {
      gas: 'CH4',
      expected: formation('CH4') - formation('CO2') - 2 * formation('H2O'),
      computed: ours('CH4') + 2 * ours('O2') - ours('CO2') - 2 * ours('H2O'),
    },
  ])('$gas', ({ gas, expected, computed }) => {
    // CH4's two heats of formation, −74.87 and −74.60, are 0.03 % of its heating value apart.
    expectWithin(`lower heating value of ${gas}`, relativeMiss(computed, expected), 0.001)
  })
})
