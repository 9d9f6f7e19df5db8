import janaf from '#reference/janaf.json' with { type: 'json' }
import { condensedRecords, gasRecords, type SpeciesRecord } from '#science/gas/speciesData.ts'
import { molarEnthalpy, molarEntropy, molarHeatCapacity, shiftConstant } from '#science/gas/thermo.ts'
import type { CheckSet, PointRow } from '../row.ts'

type Species = keyof typeof janaf.tables

const records: Readonly<Record<Species, SpeciesRecord>> = {
  ...gasRecords,
  graphite: condensedRecords.graphite,
}
const SOURCE = 'NIST-JANAF Thermochemical Tables, 4th edition, 1998 [bib:chase1998]'

/** Set before the code was written: polynomials of another edition; H2O with another treatment of its rotation. */
const shareOf = (species: Species): number => (species === 'H2O' ? 0.02 : 0.005)

/** Half the table's last digit [kJ/mol]. */
const HALF_DIGIT = 0.0005

const tableRows = (Object.keys(janaf.tables) as Species[]).flatMap((species) =>
  janaf.tables[species].rows
    // By design the polynomials leave JANAF for CH4 above 1000 K.
    .filter(([T]) => species !== 'CH4' || (T as number) < 1000)
    .map((row) => {
      const [T, cp, s, , sensible, formation, , logKf] = row as [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ]
      return { species, record: records[species], T, cp, s, sensible, formation, logKf }
    }),
)

const at = (species: Species, T: number) => {
  const row = tableRows.find((r) => r.species === species && r.T === T)
  if (row === undefined) throw new Error(`JANAF has no ${species} at ${T} K`)
  return row
}

/** A column of the tables beside a function of ours. */
const column = (
  symbol: 'cp' | 's',
  title: string,
  note: string,
  ours: (record: SpeciesRecord, T: number) => number,
): CheckSet => ({
  title,
  source: SOURCE,
  standing: 'reference data',
  note,
  rows: () =>
    tableRows.map((row) => ({
      check: `JANAF ${row.species} ${symbol} ${row.T} K`,
      published: row[symbol],
      ours: ours(row.record, row.T),
      unit: 'J/(mol K)',
      allowed: { share: shareOf(row.species) },
    })),
})

const heatCapacity = column(
  'cp',
  'heat capacity of the gases and of graphite',
  '0.5 %, water vapour 2 %: the NASA polynomials are of another edition.',
  molarHeatCapacity,
)
const entropy = column('s', 'their entropy', '0.5 %, water vapour 2 %.', molarEntropy)

const enthalpy: CheckSet = {
  title: 'their enthalpy over 298.15 K',
  source: SOURCE,
  standing: 'reference data',
  note: '0.5 %, water vapour 2 %; half the last digit of the table is left aside.',
  rows: () =>
    tableRows
      .filter(({ T }) => T !== 298.15)
      .map(({ species, record, T, sensible }) => ({
        check: `JANAF ${species} h ${T} K`,
        published: sensible,
        ours: (molarEnthalpy(record, T) - molarEnthalpy(record, 298.15)) / 1000,
        unit: 'kJ/mol',
        allowed: { share: shareOf(species), rounding: HALF_DIGIT },
      })),
}

const ours = (species: keyof typeof gasRecords): number => molarEnthalpy(gasRecords[species], 298.15) / 1000
const formation = (species: Species): number => at(species, 298.15).formation

const formationHeat: CheckSet = {
  title: 'heats of formation and of combustion',
  source: SOURCE,
  standing: 'reference data',
  note: '0.5 % of a heat of formation, 0.1 % of a heating value: CH4’s two heats of formation, −74.87 and −74.60, are 0.03 % of its heating value apart.',
  rows: (): readonly PointRow[] => [
    ...(['CO2', 'CO', 'H2O', 'CH4'] as const).map((species) => ({
      check: `JANAF ${species} heat of formation`,
      published: formation(species),
      ours: ours(species),
      unit: 'kJ/mol',
      allowed: { share: 0.005 },
    })),
    ...[
      { gas: 'H2', published: -formation('H2O'), value: ours('H2') + ours('O2') / 2 - ours('H2O') },
      {
        gas: 'CO',
        published: formation('CO') - formation('CO2'),
        value: ours('CO') + ours('O2') / 2 - ours('CO2'),
      },
      {
        gas: 'CH4',
        published: formation('CH4') - formation('CO2') - 2 * formation('H2O'),
        value: ours('CH4') + 2 * ours('O2') - ours('CO2') - 2 * ours('H2O'),
      },
    ].map(({ gas, published, value }) => ({
      check: `lower heating value of ${gas}`,
      published,
      ours: value,
      unit: 'kJ/mol',
      allowed: { share: 0.001 },
    })),
  ],
}

const shift: CheckSet = {
  title: 'water-gas shift CO + H2O = CO2 + H2, equilibrium constant',
  source: `${SOURCE}, from log K of formation`,
  standing: 'reference data',
  note: '1 % in K; the third decimal of log K is 0.1 % each.',
  rows: () =>
    [500, 800, 1000, 1500, 1800, 2000].map((T) => ({
      check: `shift constant at ${T} K`,
      published: 10 ** (at('CO2', T).logKf - at('CO', T).logKf - at('H2O', T).logKf),
      ours: shiftConstant(T),
      unit: '',
      allowed: { share: 0.01 },
    })),
}

/** Log K of formation of a species [1]. */
export const janafLogKf = (species: Species, T: number): number => {
  // CH4 above 1000 K is compared here and nowhere else: read straight from the table.
  const row = janaf.tables[species].rows.find((r) => r[0] === T)
  if (row === undefined) throw new Error(`JANAF has no ${species} at ${T} K`)
  return row[7] as number
}
export type JanafSpecies = Species

export const janafSets: readonly CheckSet[] = [heatCapacity, entropy, enthalpy, formationHeat, shift]
