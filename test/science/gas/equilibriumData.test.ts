import { describe, expect, test } from 'vitest'
import reference from '#reference/tm4513.json' with { type: 'json' }
import { equilibriumRecords } from '#science/gas/equilibriumData.ts'
import { condensedRecords, type SpeciesRecord } from '#science/gas/speciesData.ts'
import { molarEnthalpy, molarEntropy, molarHeatCapacity } from '#science/gas/thermo.ts'

const records: Readonly<Record<string, SpeciesRecord>> = {
  ...equilibriumRecords,
  graphite: condensedRecords.graphite,
}

describe(reference.source, () => {
  test.each(Object.entries(reference.species))('%s', (name, { composition, terms }) => {
    const { low, high, composition: ours } = records[name] as SpeciesRecord
    expect(ours).toEqual({ C: 0, H: 0, O: 0, N: 0, Ar: 0, ...composition })
    expect(low).toEqual(terms[0])
    expect(high).toEqual(terms[1] ?? terms[0])
  })
})

test.each(Object.keys(equilibriumRecords))('the two ranges of %s meet at 1000 K', (name) => {
  const record = records[name] as SpeciesRecord
  const upper: SpeciesRecord = { ...record, low: record.high }
  for (const property of [molarHeatCapacity, molarEnthalpy, molarEntropy])
    expect(Math.abs(property(record, 1000) / property(upper, 1000) - 1)).toBeLessThan(1e-4)
})
