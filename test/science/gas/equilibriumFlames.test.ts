import { describe, expect, test } from 'vitest'
import reference from '#reference/adiabaticFlame.json' with { type: 'json' }
import cantera from '#reference/equilibriumCantera.json' with { type: 'json' }
import { equilibriumAt } from '#science/gas/equilibrium.ts'
import { flameOf } from '#scripts/validation/gas/feed.ts'

// Temperatures and compositions are rows of docs/validation.md; here is what is no number.

describe(`soot forms where another program has it: ${reference.cantera.source}`, () => {
  test.each(reference.cantera.rows)('methane and air, phi = $phi', ({ phi, mole_fraction }) => {
    expect(flameOf({ CH4: 1 }, phi, 300).carbonForms).toBe(mole_fraction['C(gr)'] > 0)
  })

  test.each(cantera.rows)('$feed at $temperature K and $pressure Pa', (row) => {
    const ours = equilibriumAt(row.temperature, row.pressure, row.atoms)
    expect(ours.ok && ours.carbonForms).toBe(row.graphite > 0)
  })
})

test('hydrogen burns hotter than methane, and both coolest with twice the air', () => {
  const hot = (fuel: 'H2' | 'CH4', phi: number): number => flameOf({ [fuel]: 1 }, phi, 298.15).temperature
  expect(hot('H2', 1)).toBeGreaterThan(hot('CH4', 1))
  for (const fuel of ['H2', 'CH4'] as const) expect(hot(fuel, 0.5)).toBeLessThan(hot(fuel, 1))
})
