import { expect, test } from 'vitest'
import { type Quantity, type QuantityKey, quantities } from '#basis/quantities.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { unitBySymbol } from '#basis/unitTable.ts'

const rows = Object.entries(quantities) as [QuantityKey, Quantity][]

test.each(rows)('%s is a row a maker can use', (key, row) => {
  expect(row.min).toBeLessThan(row.max)
  expect(row.name).toMatch(/^(Reynolds )?[a-z][a-z ]+$/)
  expect(row.symbol).not.toBe('')
  // One sentence: a capital, a full stop, and none in between.
  expect(row.description).toMatch(/^[A-Z][^.]+\.$/)
  for (const symbol of row.displayUnits) expect(unitBySymbol(row.kind, symbol)).not.toBeNull()
  if (row.kind !== 'ratio' && row.kind !== 'count') expect(row.displayUnits.length).toBeGreaterThan(0)
  for (const symbol of [undefined, ...row.displayUnits])
    expect(formatQuantity(row.max, key, symbol)).toMatch(/^[\d.]/)
})

test('temperatures of the table lie above absolute zero', () => {
  for (const [, row] of rows) if (row.kind === 'temperature') expect(row.min).toBeGreaterThan(0)
})
