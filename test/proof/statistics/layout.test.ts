import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { equalSpreads } from '#proof/statistics/equalSpreads.ts'
import { adjustedPairs, degreesLeft, driftAlong, type Layout } from '#proof/statistics/layout.ts'
import { tukey } from '#proof/statistics/manyComparisons.ts'
import { burnsForDifference } from '#proof/statistics/moreBurns.ts'
import { sampleOf } from '#proof/statistics/sample.ts'
import { chiSquareTail } from '#proof/statistics/special/chiSquare.ts'
import scipy from '#reference/statisticsScipy.json' with { type: 'json' }

const relative = (value: number | undefined, expected: number, tolerance: number): void =>
  expect(Math.abs((value as number) - expected)).toBeLessThanOrEqual(tolerance * Math.abs(expected))

/** As one list of pairs, each named and first − second. */
const named = (layout: Layout) => {
  const found = adjustedPairs(layout)
  return found?.pairs.map((pair) => ({
    ...pair,
    names: [found.groups[pair.first], found.groups[pair.second]] as const,
  }))
}

// Source: NumPy's pseudo-inverse and a fine studentized range; test/reference/generators/statistics_scipy.py.
describe('days, batches and drift taken out, against SciPy', () => {
  it.each(scipy.layouts.map((one, i) => [i, one] as const))('case %i', (_, expected) => {
    const { groups, factors, values, pairs, df, residualSd } = expected
    const along = 'along' in expected ? { along: expected.along as number[] } : {}
    const layout: Layout = { groups, factors, values, ...along }
    expect(degreesLeft(layout)).toBe(df)
    const found = named(layout)
    relative(adjustedPairs(layout)?.residualSd, residualSd, 1e-10)
    expect(found).toHaveLength(pairs.length)
    for (const [a, b, value, error, low, high] of pairs as [
      string,
      string,
      number,
      number,
      number,
      number,
    ][]) {
      const pair = found?.find(({ names }) => names.includes(a) && names.includes(b))
      const sign = pair?.names[0] === a ? 1 : -1
      relative(sign * (pair?.value ?? Number.NaN), value, 1e-9)
      relative(pair?.standardError, error, 1e-10)
      const ends = [sign * (pair?.low ?? 0), sign * (pair?.high ?? 0)].sort((x, y) => x - y)
      expect(ends[0]).toBeCloseTo(low, 8)
      expect(ends[1]).toBeCloseTo(high, 8)
    }
    if (!('slope' in expected)) return
    const [slope, error] = expected.slope as [number, number]
    const drift = driftAlong(layout as Layout & { readonly along: readonly number[] })
    relative(drift?.value, slope, 1e-9)
    relative(drift?.standardError, error, 1e-10)
    expect(drift?.df).toBe(df)
  })

  it('χ²', () => {
    for (const [x, df, expected] of scipy.chiSquare as [number, number, number][])
      relative(chiSquareTail(x, df), expected, 1e-11)
    expect(chiSquareTail(0, 3)).toBe(1)
    expect(chiSquareTail(Number.POSITIVE_INFINITY, 3)).toBe(0)
  })

  it('Bartlett', () => {
    for (const { groups, p } of scipy.bartlett) relative(equalSpreads(groups.map(sampleOf)) ?? 0, p, 1e-9)
    expect(
      equalSpreads(
        [
          [1, 1],
          [2, 2],
        ].map(sampleOf),
      ),
    ).toBe(1)
    expect(
      equalSpreads(
        [
          [1, 1],
          [2, 3],
        ].map(sampleOf),
      ),
    ).toBe(0)
    expect(equalSpreads([[1], [2, 3]].map(sampleOf))).toBeNull()
  })
})

describe('what must hold', () => {
  const value = fc.integer({ min: 1, max: 999 }).map((tenths) => tenths / 10)

  it('without factors it is Tukey and Kramer', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(value, { minLength: 2, maxLength: 4 }), { minLength: 2, maxLength: 4 }),
        (all) => {
          const values = all.flat()
          const groups = all.flatMap((some, i) => some.map(() => `${i}`))
          const [by, of] = [adjustedPairs({ values, groups, factors: [] }), tukey(all.map(sampleOf))]
          for (const [i, pair] of (by?.pairs ?? []).entries()) {
            expect(pair.value).toBeCloseTo(of?.[i]?.value as number, 8)
            expect(pair.high).toBeCloseTo(of?.[i]?.high as number, 6)
          }
          expect(by?.pairs).toHaveLength(of?.length as number)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('a day that is good for all its burns changes nothing', () => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 9, maxLength: 9 }), value, (values, gift) => {
        const groups = values.map((_, i) => 'ABC'[i % 3] as string)
        const days = values.map((_, i) => `${Math.floor(i / 3)}`)
        const pairs = (given: readonly number[]) =>
          adjustedPairs({ values: given, groups, factors: [days] })?.pairs
        const before = pairs(values)
        const after = pairs(values.map((one, i) => (days[i] === '1' ? one + gift : one)))
        for (const [i, pair] of (before ?? []).entries()) {
          expect(after?.[i]?.low).toBeCloseTo(pair.low, 6)
          expect(after?.[i]?.high).toBeCloseTo(pair.high, 6)
        }
      }),
      { numRuns: 50 },
    )
  })

  it('variants that each had a day of their own cannot be told from it', () => {
    const layout = { values: [1, 2, 3, 4], groups: ['A', 'A', 'B', 'B'], factors: [['x', 'x', 'y', 'y']] }
    expect(degreesLeft(layout)).toBeNull()
    expect(adjustedPairs(layout)).toBeNull()
    expect(driftAlong({ ...layout, factors: [], along: [1, 1, 2, 2] })).toBeNull()
  })

  it('so many burns do what they promise: an interval no wider than asked', () => {
    // By hand: t(2·(n − 1))·√(2/n) for one spread; 4.303·1 at n = 2, 2.776·0.816 = 2.27 at 3, 2.447·0.707 = 1.73 at 4.
    expect(burnsForDifference([1, 1], 2.3)).toBe(3)
    expect(burnsForDifference([1, 1], 1.8)).toBe(4)
    expect(burnsForDifference([1, 1], 0.01)).toBeNull()
    expect(burnsForDifference([0, 0], 1)).toBe(2)
  })
})
