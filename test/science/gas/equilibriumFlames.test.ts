import { describe, expect, test } from 'vitest'
import reference from '#reference/adiabaticFlame.json' with { type: 'json' }
import { type Equilibrium, equilibriumAtEnthalpy } from '#science/gas/equilibrium.ts'
import { expectWithin, relativeMiss } from '../outsideCheck.ts'
import { type Feed, oxygenNeed, together } from './flame.ts'

const STANDARD_ATMOSPHERE = 101325

const burn = (fuel: Feed['moles'], phi: number, temperature: number): Equilibrium => {
  const need = oxygenNeed(fuel)
  const air = { O2: need / phi, N2: (3.76 * need) / phi }
  const { atoms, enthalpy } = together({ moles: fuel, temperature }, { moles: air, temperature })
  const flame = equilibriumAtEnthalpy(enthalpy, STANDARD_ATMOSPHERE, atoms)
  if (!flame.ok) throw new Error(flame.sentence)
  return flame
}

describe(`${reference.cantera.source}: with another set of polynomials, within 2 K and 2 % of each major species`, () => {
  test.each(reference.cantera.rows)('methane and air, phi = $phi', ({ phi, T_ad_K, mole_fraction }) => {
    const flame = burn({ CH4: 1 }, phi, 300)
    const all = flame.gasMoles + flame.graphite
    const ours = { ...flame.moles, 'C(gr)': flame.graphite }
    expectWithin(
      `flame of CH4, phi ${phi}, temperature`,
      Math.abs(flame.temperature - T_ad_K) / T_ad_K,
      2 / T_ad_K,
    )
    const major = Object.entries(mole_fraction).filter(([, x]) => x > 0.01) as [keyof typeof ours, number][]
    expect(major.length).toBeGreaterThan(3)
    for (const [species, x] of major)
      expectWithin(`flame of CH4, phi ${phi}, ${species}`, relativeMiss(ours[species] / all, x), 0.02)
    expect(flame.carbonForms).toBe(mole_fraction['C(gr)'] > 0)
    // The radicals are no major species; they still have to be of the right size where they matter.
    for (const species of ['OH', 'H', 'O', 'NO'] as const)
      if (mole_fraction[species] > 1e-4)
        expectWithin(
          `flame of CH4, phi ${phi}, ${species}`,
          relativeMiss(ours[species] / all, mole_fraction[species]),
          0.02,
        )
  })
})

const fuels: Readonly<Record<string, Feed['moles']>> = {
  CH4: { CH4: 1 },
  H2: { H2: 1 },
  CO: { CO: 1 },
  'C(gr)': { graphite: 1 },
  'woodgas_dry(vol:CO18,H2 10,CH4 3,CO2 12,N2 57)': { CO: 18, H2: 10, CH4: 3, CO2: 12, N2: 57 },
  'woodgas_wet(vol:CO17,H2 9,CH4 3,CO2 11,H2O 12,N2 48)': {
    CO: 17,
    H2: 9,
    CH4: 3,
    CO2: 11,
    H2O: 12,
    N2: 48,
  },
}

describe(`${reference.solver.source}; column of the TM-4513 polynomials, within 2 K`, () => {
  const misses: number[] = []
  test.each(reference.solver.rows)('$fuel, phi = $phi', ({ fuel, T0_K, phi, T_eq_K_tm4513 }) => {
    const flame = burn(fuels[fuel] as Feed['moles'], phi, T0_K)
    const miss = Math.abs(flame.temperature - T_eq_K_tm4513)
    misses.push(miss)
    expectWithin(`flame of ${fuel}, phi ${phi}`, miss / T_eq_K_tm4513, 2 / T_eq_K_tm4513)
  })
  test('the worst is printed', () => {
    console.log(
      `flame temperatures of ${misses.length} mixtures: worst ${Math.max(...misses).toFixed(2)} K apart`,
    )
    expect(misses).toHaveLength(reference.solver.rows.length)
  })
})

describe(`${reference.solver.source}; compositions of the GRI-Mech 3.0 column, within 2 % of each major species`, () => {
  test.each(reference.solver.rows)('$fuel, phi = $phi', (row) => {
    const flame = burn(fuels[row.fuel] as Feed['moles'], row.phi, row.T0_K)
    for (const species of ['CO', 'O2', 'CO2', 'H2O'] as const) {
      const x = row[`x_${species}`]
      if (x < 0.01) continue
      expectWithin(
        `flame of ${row.fuel}, phi ${row.phi}, ${species}`,
        relativeMiss(flame.moles[species] / flame.gasMoles, x),
        0.02,
      )
    }
  })
})

test('textbook values, from memory, are printed beside ours and decide nothing', () => {
  const ours = {
    CH4: burn({ CH4: 1 }, 1, 298.15),
    H2: burn({ H2: 1 }, 1, 298.15),
    CO: burn({ CO: 1 }, 1, 298.15),
  }
  for (const { case: label, T_K, provenance } of reference.textbook.rows) {
    const fuel = label.split('/')[0] as keyof typeof ours
    console.log(
      `${label}: ${T_K} K (${provenance}); here, at equilibrium, ${ours[fuel].temperature.toFixed(0)} K`,
    )
  }
  expect(ours.H2.temperature).toBeGreaterThan(ours.CH4.temperature)
})
