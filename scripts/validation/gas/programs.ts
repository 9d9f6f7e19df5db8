import cantera from '#reference/equilibriumCantera.json' with { type: 'json' }
import scipy from '#reference/equilibriumScipy.json' with { type: 'json' }
import {
  type Equilibrium,
  type EquilibriumOutcome,
  equilibriumAt,
  equilibriumAtEnthalpy,
} from '#science/gas/equilibrium.ts'
import type { EquilibriumSpecies } from '#science/gas/equilibriumData.ts'
import type { CheckSet, PointRow } from '../row.ts'

const settled = (outcome: EquilibriumOutcome): Equilibrium => {
  if (!outcome.ok) throw new Error(outcome.sentence)
  return outcome
}

/** Same polynomials on both sides: what is left is rounding. */
const SAME = 2e-6
/** Cantera's graphite has a volume and feels the pressure, 5e-4 of R T at 10 bar; ours does not. */
const GRAPHITE_UNDER_PRESSURE = 1e-3

const byCantera: CheckSet = {
  title: 'mixtures at equilibrium, 300 to 3000 K, by another program',
  source: cantera.source,
  standing: 'proof of code',
  note: '2e-6 with the same polynomials; 1e-3 for graphite under pressure, to which that program gives a volume.',
  rows: () =>
    cantera.rows.flatMap((row): PointRow[] => {
      const ours = settled(equilibriumAt(row.temperature, row.pressure, row.atoms))
      const share = row.graphite > 0 && row.pressure !== 101325 ? GRAPHITE_UNDER_PRESSURE : SAME
      const atoms = Object.values(row.atoms).reduce((sum, n) => sum + n, 0)
      const name = `${row.feed}, ${row.temperature} K, ${row.pressure / 1000} kPa`
      return [
        ...(Object.entries(row.fractions) as [EquilibriumSpecies, number][]).map(([species, x]) => ({
          check: `${name}: ${species}`,
          group: name,
          published: x,
          ours: ours.moles[species] / ours.gasMoles,
          unit: 'mol/mol',
          allowed: { share },
        })),
        {
          check: `${name}: graphite for each atom`,
          group: name,
          published: row.graphite / atoms,
          ours: ours.graphite / atoms,
          unit: 'mol/mol',
          allowed: { by: share },
        },
        {
          check: `${name}: gas`,
          group: name,
          published: row.gasMoles,
          ours: ours.gasMoles,
          unit: 'mol',
          allowed: { share },
        },
        {
          check: `${name}: enthalpy`,
          group: name,
          published: row.enthalpy,
          ours: ours.enthalpy,
          unit: 'J',
          allowed: { share },
        },
      ]
    }),
}

/** Where the objective is flat a general optimiser stops early: traces are worth few digits [1]. */
const shareOfTrace = (n: number): number => (n > 1e-3 ? 3e-4 : n > 1e-5 ? 3e-3 : 2e-2)

const byScipy: CheckSet = {
  title: 'mixtures at equilibrium, by a general optimiser',
  source: scipy.source,
  standing: 'proof of code',
  note: '0.002 K; 0.03 % of what is plentiful, 2 % of traces down to 1e-6 mol, where the optimiser stops early.',
  rows: () =>
    scipy.rows.flatMap((row): PointRow[] => {
      const ours = settled(
        row.given === 'temperature'
          ? equilibriumAt(row.temperature, scipy.pressure, row.atoms)
          : equilibriumAtEnthalpy(row.enthalpy, scipy.pressure, row.atoms),
      )
      const all = { ...ours.moles, graphite: ours.graphite }
      const where = row.given === 'temperature' ? `${row.temperature} K` : 'its enthalpy given'
      const name = `${row.gas} gas, air ratio ${row.airRatio}, ${where}`
      return [
        ...(row.given === 'temperature'
          ? []
          : [
              {
                check: `${name}: temperature`,
                group: name,
                published: row.temperature,
                ours: ours.temperature,
                unit: 'K',
                allowed: { by: 2e-3 },
              },
            ]),
        ...(Object.entries(row.moles) as [keyof typeof all, number][])
          .filter(([, n]) => n > 1e-6)
          .map(([species, n]) => ({
            check: `${name}: ${species}`,
            group: name,
            published: n,
            ours: all[species],
            unit: 'mol',
            allowed: { share: shareOfTrace(n) },
          })),
      ]
    }),
}

export const programSets: readonly CheckSet[] = [byCantera, byScipy]
