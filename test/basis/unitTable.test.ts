import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fromInches } from '#basis/units.ts'
import { fromSi, type Kind, toSi, type Unit, unitBySymbol, units } from '#basis/unitTable.ts'
import reference from '#reference/unitFactors.json' with { type: 'json' }

const unit = (kind: string, symbol: string): Unit => unitBySymbol(kind as Kind, symbol) as Unit

describe(reference.source, () => {
  test.each(reference.rows as [string, string, number][])('%s: 1 %s = %d', (kind, symbol, value) => {
    expect(Number(toSi(1, unit(kind, symbol)).toPrecision(reference.digits))).toBe(value)
  })
})

describe(reference.exact.source, () => {
  test.each(reference.exact.rows as [string, string, string][])('%s: 1 %s = %s', (kind, symbol, value) => {
    expect(toSi(1, unit(kind, symbol))).toBe(Number(value))
  })
})

const all = (Object.keys(units) as Kind[]).flatMap((kind) =>
  units[kind].map((one): [string, Unit] => [`${kind}: ${one.symbol}`, one]),
)

test.each(all)('%s there and back', (_, one) => {
  fc.assert(
    fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
      expect(Math.abs(fromSi(toSi(value, one), one) - value)).toBeLessThanOrEqual(1e-9)
    }),
  )
})

test('no two units of a kind share a spelling, and the first is the SI unit', () => {
  for (const kind of Object.keys(units) as Kind[]) {
    const ofKind: readonly Unit[] = units[kind]
    const spellings = ofKind.flatMap(({ symbol, spellings }) => [symbol, ...spellings])
    expect(new Set(spellings).size).toBe(spellings.length)
    const first = ofKind[0]
    if (first !== undefined && kind !== 'share') expect(toSi(12, first)).toBe(12)
  }
})

test('the two ways to metres agree to the last bit on every sixty-fourth', () => {
  for (let n = 0; n <= 64 * 24; n++) expect(toSi(n / 64, unit('length', 'in'))).toBe(fromInches(n / 64))
})
