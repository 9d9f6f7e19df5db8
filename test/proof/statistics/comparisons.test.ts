import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { analysisOfVariance } from '#proof/statistics/analysisOfVariance.ts'
import { pooled, welch } from '#proof/statistics/difference.ts'
import { adjustedPairs, driftAlong } from '#proof/statistics/layout.ts'
import { dunnettT3, gamesHowell, type PairDifference, tukey } from '#proof/statistics/manyComparisons.ts'
import { paired } from '#proof/statistics/paired.ts'
import { sampleOf, standardDeviation } from '#proof/statistics/sample.ts'
import { straightLine } from '#proof/statistics/trend.ts'
import nist from '#reference/nistStrd.json' with { type: 'json' }
import scipy from '#reference/statisticsScipy.json' with { type: 'json' }
import published from '#reference/statsTests.json' with { type: 'json' }

/** As close as the digits that the source gives. */
const toDigits = (value: number | undefined, expected: number): void => {
  const [, decimals = ''] = String(expected).split('.')
  const half = expected.toString().includes('e') ? 1e-9 * Math.abs(expected) : 0.5 * 10 ** -decimals.length
  expect(Math.abs((value as number) - expected)).toBeLessThanOrEqual(1.02 * half + 2e-14 * Math.abs(expected))
}
const relative = (value: number | undefined, expected: number, tolerance: number): void =>
  expect(Math.abs((value as number) - expected)).toBeLessThanOrEqual(tolerance * Math.abs(expected))

describe('Welch against published figures (test/reference/statsTests.json)', () => {
  it.each(published.welch)('$name', ({ a, b, published: said, recomputed }) => {
    const found = welch(sampleOf(a), sampleOf(b))
    if ('t' in said) toDigits(found?.t, said.t as number)
    toDigits(found?.p, said.p)
    toDigits(found?.df, recomputed.df)
    toDigits(found?.low, recomputed.ci95[0] as number)
    toDigits(found?.high, recomputed.ci95[1] as number)
    if (!('student_p' in said)) return
    const student = pooled(sampleOf(a), sampleOf(b))
    toDigits(student?.p, said.student_p as number)
    toDigits(student?.low, said.student_ci95?.[0] as number)
    toDigits(student?.high, said.student_ci95?.[1] as number)
  })

  it('paired, Student’s sleep data of R', () => {
    const { a, b } = published.welch.find(({ name }) => name.startsWith('Student sleep')) as {
      a: number[]
      b: number[]
    }
    const found = paired(a, b)
    toDigits(found?.t, published.paired_sleep.recomputed[0] as number)
    toDigits(found?.p, published.paired_sleep.recomputed[1] as number)
    expect(found?.df).toBe(9)
  })
})

const pairOf = (pairs: readonly PairDifference[] | null, i: number, j: number): PairDifference => {
  const found = pairs?.find(({ first, second }) => first === Math.min(i, j) && second === Math.max(i, j))
  if (found === undefined) throw new Error(`No pair ${i} ${j}`)
  return i < j ? found : { ...found, value: -found.value, low: -found.high, high: -found.low }
}

describe('many variants', () => {
  it.each(['same_size', 'diff_size'] as const)('Tukey against SAS, %s', (which) => {
    const { data, rows_i_j_low_diff_high_sig: rows } = published.tukey_hsd[which]
    const pairs = tukey(data.map(sampleOf))
    for (const [i, j, low, diff, high, significant] of rows as [
      number,
      number,
      number,
      number,
      number,
      number,
    ][]) {
      const pair = pairOf(pairs, i - 1, j - 1)
      toDigits(pair.value, diff)
      // SAS prints ten digits, of which its own quantile carries five: the finer integral below says so too.
      relative((pair.high - pair.low) / 2, (high - low) / 2, 2e-5)
      expect(pair.p < 0.05).toBe(significant === 1)
    }
  })

  it('Games–Howell against SPSS and R', () => {
    const { data, rows_i_j_diff_low_high_p: rows } = published.games_howell
    const pairs = gamesHowell(data.map(sampleOf))
    for (const [i, j, diff, low, high, p] of rows as [number, number, number, number, number, number][]) {
      const pair = pairOf(pairs, i, j)
      toDigits(pair.value, diff)
      // Likewise; R says of its quantile that it is good to about four decimals.
      relative(pair.low, low, 2e-7)
      relative(pair.high, high, 2e-7)
      relative(pair.p, p, 1e-8)
    }
  })

  // An integral of another kind, to 1e-13: generators/statistics_scipy.py, fine_range_cdf.
  it('intervals to 1e-9 where the published programs stop at 1e-5 and 1e-7', () => {
    for (const which of ['same_size', 'diff_size'] as const) {
      const pairs = tukey(published.tukey_hsd[which].data.map(sampleOf))
      for (const [i, j, half] of scipy.publishedHalfWidths[which] as [number, number, number][]) {
        const { low, high } = pairOf(pairs, i, j)
        relative((high - low) / 2, half, 1e-9)
      }
    }
    const pairs = gamesHowell(published.games_howell.data.map(sampleOf))
    for (const [i, j, half, p] of scipy.publishedHalfWidths.games_howell as [
      number,
      number,
      number,
      number,
    ][]) {
      const pair = pairOf(pairs, i, j)
      relative((pair.high - pair.low) / 2, half, 1e-9)
      relative(pair.p, p, 1e-9)
    }
  })
})

describe('SciPy (generators/statistics_scipy.py)', () => {
  it.each(scipy.comparisons.map((one, i) => [i, one] as const))('case %i', (_, one) => {
    const samples = one.groups.map(sampleOf)
    const [a, b] = samples as [(typeof samples)[0], (typeof samples)[0]]
    relative(welch(a, b)?.t, one.welch.t, 1e-10)
    relative(welch(a, b)?.p, one.welch.p, 1e-8)
    relative(pooled(a, b)?.p, one.pooled.p, 1e-8)
    if (one.paired !== undefined)
      relative(paired(one.groups[0] as number[], one.groups[1] as number[])?.p, one.paired.p, 1e-8)
    const anova = analysisOfVariance(one.groups)
    relative(anova?.f, one.anova.f, 1e-10)
    relative(anova?.p, one.anova.p, 1e-8)
    for (const [i, j, value, low, high, p] of one.tukey as [
      number,
      number,
      number,
      number,
      number,
      number,
    ][]) {
      const pair = pairOf(tukey(samples), i, j)
      expect(pair.value).toBeCloseTo(value, 10)
      expect(pair.low).toBeCloseTo(low, 6)
      expect(pair.high).toBeCloseTo(high, 6)
      expect(pair.p).toBeCloseTo(p, 8)
    }
  })

  it.each(scipy.lines)('a line through $x', ({ x, y, slope, intercept, slopeError, interceptError, p }) => {
    const line = straightLine(x, y)
    relative(line?.slope.value, slope, 1e-9)
    relative(line?.intercept.value, intercept, 1e-9)
    relative(line?.slope.standardError, slopeError, 1e-9)
    relative(line?.intercept.standardError, interceptError, 1e-9)
    relative(line?.slope.p, p, 1e-8)
  })

  it('blocks taken out of an unbalanced layout', () => {
    const { groups, blocks, values, df, ...expected } = scipy.blocked
    const found = adjustedPairs({ groups, factors: [blocks], values })
    for (const group of ['B', 'C'] as const) {
      const pair = pairOf(found?.pairs ?? null, 0, found?.groups.indexOf(group) ?? 0)
      const [value, error] = expected[`${group}-A`] as [number, number]
      expect(found?.df).toBe(df)
      relative(-pair.value, value, 1e-10)
      relative(pair.standardError, error, 1e-10)
    }
  })
})

describe('NIST StRD (test/reference/nistStrd.json)', () => {
  it.each(nist.anova)('$dataset, analysis of variance to every certified digit', (set) => {
    const found = analysisOfVariance(Object.values(set.data) as number[][])
    relative(found?.between.squares, set.SS_between, 1e-14)
    relative(found?.within.squares, set.SS_within, 1e-14)
    relative(found?.f, set.F, 1e-13)
    relative(found?.explained, set.R2, 1e-14)
    relative(found?.residualSd, set.resid_sd, 1e-13)
    relative(found?.p, set.p_from_certified_F_computed, 2e-8)
    expect([found?.between.df, found?.within.df]).toEqual([set.df_between, set.df_within])
  })

  const alternating = (first: number, low: number, high: number): readonly number[] => [
    first,
    ...Array.from({ length: 500 }, () => [low, high]).flat(),
  ]
  // Constructed as their published definitions say; see `construct` in the reference file.
  const data: Readonly<Record<string, readonly number[]>> = {
    NumAcc1: [10000001, 10000003, 10000002],
    NumAcc2: alternating(1.2, 1.1, 1.3),
    NumAcc3: alternating(1000000.2, 1000000.1, 1000000.3),
    NumAcc4: alternating(10000000.2, 10000000.1, 10000000.3),
  }
  it.each(nist.univariate)('$dataset: mean and standard deviation exactly', ({ dataset, mean, sd }) => {
    const sample = sampleOf(data[dataset] as readonly number[])
    expect(sample.mean).toBe(mean)
    expect(standardDeviation(sample)).toBe(sd)
  })

  it('Norris, a straight line', () => {
    const [norris] = nist.linear
    const xy = norris?.xy as [number, number][]
    const line = straightLine(
      xy.map(([x]) => x),
      xy.map(([, y]) => y),
    )
    relative(line?.slope.value, norris?.B1 as number, 1e-13)
    relative(line?.intercept.value, norris?.B0 as number, 1e-11)
    relative(line?.slope.standardError, norris?.se_B1 as number, 1e-12)
    relative(line?.intercept.standardError, norris?.se_B0 as number, 1e-12)
    relative(line?.residualSd, norris?.resid_sd as number, 1e-12)
    relative(line?.explained, norris?.R2 as number, 1e-14)
  })
})

describe('what must hold of any burns', () => {
  const value = fc.integer({ min: 1, max: 9999 }).map((tenths) => tenths / 10)
  const values = fc.array(value, { minLength: 2, maxLength: 8 })

  // The range of k means is never taken for more than the largest of their k(k − 1)/2 differences taken each by itself.
  it('Dunnett’s interval is about the same difference as Games and Howell’s, and never narrower; of two it is Welch’s', () => {
    fc.assert(
      fc.property(fc.array(values, { minLength: 2, maxLength: 5 }), (groups) => {
        const samples = groups.map(sampleOf)
        const [wide, narrow] = [dunnettT3(samples), gamesHowell(samples)]
        for (const [i, { value: middle, df, low, high }] of (wide ?? []).entries()) {
          expect([middle, df]).toEqual([narrow?.[i]?.value, narrow?.[i]?.df])
          expect(high - low).toBeGreaterThanOrEqual(
            ((narrow?.[i]?.high as number) - (narrow?.[i]?.low as number)) * (1 - 1e-9),
          )
        }
        if (samples.length > 2) return
        const [a, b] = samples as [(typeof samples)[0], (typeof samples)[0]]
        expect(wide?.[0]?.high).toBeCloseTo(welch(a, b)?.high as number, 6)
      }),
      { numRuns: 40 },
    )
  })

  it('a − b is the mirror image of b − a', () => {
    fc.assert(
      fc.property(values, values, (a, b) => {
        const [there, back] = [welch(sampleOf(a), sampleOf(b)), welch(sampleOf(b), sampleOf(a))]
        expect(there?.low).toBe(back === null ? undefined : -back.high)
        expect(there?.p).toBe(back?.p)
      }),
    )
  })

  it('a balanced layout of two is the paired test', () => {
    const a = [9.1, 8.2, 9.9, 8.8]
    const b = [7.4, 6.9, 8.0, 7.7]
    const days = a.map((_, i) => `${i}`)
    const layout = {
      values: [...a, ...b],
      groups: [...a.map(() => 'a'), ...b.map(() => 'b')],
      factors: [[...days, ...days]],
    }
    const [by, of] = [adjustedPairs(layout)?.pairs[0], paired(a, b)]
    expect(by?.value).toBeCloseTo(of?.value as number, 12)
    expect(by?.standardError).toBeCloseTo(of?.standardError as number, 12)
    expect(by?.df).toBe(of?.df)
  })

  it('a drift that is put in is found, whatever the groups', () => {
    const groups = ['A', 'B', 'B', 'A', 'A', 'B', 'B', 'A']
    const noise = [0.1, -0.1, 0, 0.1, -0.1, 0, 0.1, -0.1]
    const values = groups.map((group, i) => (group === 'A' ? 9 : 7) + 0.25 * i + (noise[i] as number))
    const drift = driftAlong({ groups, values, factors: [], along: [0, 1, 2, 3, 4, 5, 6, 7] })
    expect(drift?.low).toBeLessThan(0.25)
    expect(drift?.high).toBeGreaterThan(0.25)
    expect(drift?.p).toBeLessThan(1e-4)
  })

  it('says nothing where nothing can be said', () => {
    expect(welch(sampleOf([1]), sampleOf([2, 3]))).toBeNull()
    expect(paired([1], [2])).toBeNull()
    expect(straightLine([1, 1, 1], [1, 2, 3])).toBeNull()
    expect(gamesHowell([sampleOf([1, 2]), sampleOf([3])])).toBeNull()
    expect(dunnettT3([sampleOf([1, 2]), sampleOf([3])])).toBeNull()
    expect(tukey([sampleOf([1]), sampleOf([3])])).toBeNull()
    expect(() => sampleOf([])).toThrow(RangeError)
    expect(() => sampleOf([1, Number.NaN])).toThrow(RangeError)
  })
})
