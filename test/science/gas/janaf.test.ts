import { expect, test } from 'vitest'
import { condensedRecords, gasRecords } from '#science/gas/speciesData.ts'
import { molarEnthalpy } from '#science/gas/thermo.ts'

// Heat capacities, enthalpies and entropies beside JANAF are rows of docs/validation.md.

test('elements have no heat of formation', () => {
  // Half a digit of JANAF's kJ/mol.
  const elements = [gasRecords.N2, gasRecords.O2, gasRecords.Ar, gasRecords.H2, condensedRecords.graphite]
  for (const record of elements) expect(Math.abs(molarEnthalpy(record, 298.15))).toBeLessThan(0.5)
})
