import reference from '#reference/adiabaticFlame.json' with { type: 'json' }
import type { CheckSet, PointRow } from '../row.ts'
import { type Feed, flameOf } from './feed.ts'

/** Species below this are no major ones; radicals must still be of the right size where they matter. */
const MAJOR = 0.01
const RADICALS = ['OH', 'H', 'O', 'NO'] as const
const RADICAL_MATTERS = 1e-4

const methane: CheckSet = {
  title: 'flames of methane with graphite: temperature and composition',
  source: reference.cantera.source,
  standing: 'proof of code',
  note: 'Another set of polynomials (GRI-Mech 3.0): 2 K, and 2 % of each species above 1 %, of radicals above 0.01 %.',
  rows: () =>
    reference.cantera.rows.flatMap(({ phi, T_ad_K, mole_fraction }): PointRow[] => {
      const flame = flameOf({ CH4: 1 }, phi, 300)
      const all = flame.gasMoles + flame.graphite
      const ours = { ...flame.moles, 'C(gr)': flame.graphite }
      const radical = (species: string): boolean => (RADICALS as readonly string[]).includes(species)
      return [
        {
          check: `flame of CH4, phi ${phi}, temperature`,
          published: T_ad_K,
          ours: flame.temperature,
          unit: 'K',
          allowed: { by: 2 },
        },
        ...(Object.entries(mole_fraction) as [keyof typeof ours, number][])
          .filter(([species, x]) => x > (radical(species) ? RADICAL_MATTERS : MAJOR))
          .map(([species, x]) => ({
            check: `flame of CH4, phi ${phi}, ${species}`,
            published: x,
            ours: ours[species] / all,
            unit: 'mol/mol',
            allowed: { share: 0.02 },
          })),
      ]
    }),
}

/** Mixtures of the solver table, as it names them. */
const fuels: Readonly<Record<string, { readonly name: string; readonly moles: Feed['moles'] }>> = {
  CH4: { name: 'CH4', moles: { CH4: 1 } },
  H2: { name: 'H2', moles: { H2: 1 } },
  CO: { name: 'CO', moles: { CO: 1 } },
  'C(gr)': { name: 'graphite', moles: { graphite: 1 } },
  'woodgas_dry(vol:CO18,H2 10,CH4 3,CO2 12,N2 57)': {
    name: 'dry wood gas',
    moles: { CO: 18, H2: 10, CH4: 3, CO2: 12, N2: 57 },
  },
  'woodgas_wet(vol:CO17,H2 9,CH4 3,CO2 11,H2O 12,N2 48)': {
    name: 'wet wood gas',
    moles: { CO: 17, H2: 9, CH4: 3, CO2: 11, H2O: 12, N2: 48 },
  },
}

const nameOf = (fuel: string, phi: number, T: number): string =>
  `flame of ${fuels[fuel]?.name} at ${T} K, phi ${phi}`

const temperatures: CheckSet = {
  title: 'flames of single gases and of wood gas: temperature',
  source: `${reference.solver.source}; column of the TM-4513 polynomials`,
  standing: 'proof of code',
  note: '2 K.',
  rows: () =>
    reference.solver.rows.map(({ fuel, T0_K, phi, T_eq_K_tm4513 }) => ({
      check: nameOf(fuel, phi, T0_K),
      published: T_eq_K_tm4513,
      ours: flameOf(fuels[fuel]?.moles ?? {}, phi, T0_K).temperature,
      unit: 'K',
      allowed: { by: 2 },
    })),
}

const compositions: CheckSet = {
  title: 'the same flames: composition',
  source: `${reference.solver.source}; column of the GRI-Mech 3.0 polynomials`,
  standing: 'proof of code',
  note: '2 % of each species above 1 %.',
  rows: () =>
    reference.solver.rows.flatMap((row): PointRow[] => {
      const flame = flameOf(fuels[row.fuel]?.moles ?? {}, row.phi, row.T0_K)
      return (['CO', 'O2', 'CO2', 'H2O'] as const)
        .filter((species) => row[`x_${species}`] >= MAJOR)
        .map((species) => ({
          check: `${nameOf(row.fuel, row.phi, row.T0_K)}, ${species}`,
          published: row[`x_${species}`],
          ours: flame.moles[species] / flame.gasMoles,
          unit: 'mol/mol',
          allowed: { share: 0.02 },
        }))
    }),
}

const textbook: CheckSet = {
  title: 'flame temperatures of textbooks',
  source: reference.textbook.source,
  standing: 'from memory',
  note: 'At equilibrium; 10 K.',
  rows: () =>
    reference.textbook.rows
      .filter(({ case: label }) => label.includes('equilibrium'))
      .map(({ case: label, T_K, provenance }) => ({
        check: `${label} (${provenance})`,
        published: T_K,
        ours: flameOf(fuels[label.split('/')[0] ?? '']?.moles ?? {}, 1, 298.15).temperature,
        unit: 'K',
        allowed: { by: 10 },
      })),
}

export const flameSets: readonly CheckSet[] = [methane, temperatures, compositions, textbook]
