import { describe, expect, it } from 'vitest'
import { incompleteBeta } from '#proof/statistics/special/beta.ts'
import { logGamma } from '#proof/statistics/special/gamma.ts'
import { maximumModulusCdf, maximumModulusQuantile } from '#proof/statistics/special/maximumModulus.ts'
import { noncentralTCdf } from '#proof/statistics/special/noncentralT.ts'
import { normalCdf } from '#proof/statistics/special/normal.ts'
import { studentizedRangeCdf, studentizedRangeQuantile } from '#proof/statistics/special/studentizedRange.ts'
import { fisherTail, studentWithin, twoSided } from '#proof/statistics/special/studentT.ts'
import scipy from '#reference/statisticsScipy.json' with { type: 'json' }
import published from '#reference/statsTests.json' with { type: 'json' }

const rows = (table: readonly (readonly number[])[]) =>
  table.map((row) => ({ args: row.slice(0, -1), expected: row.at(-1) as number }))

/** Largest error over a table, relative where the value is large, absolute below `floor`. */
const worst = (
  table: readonly (readonly number[])[],
  f: (...args: number[]) => number,
  floor = 1e-3,
): number =>
  Math.max(
    ...rows(table).map(
      ({ args, expected }) => Math.abs(f(...args) - expected) / Math.max(Math.abs(expected), floor),
    ),
  )

// Source of every table: SciPy, test/reference/generators/statistics_scipy.py.
describe('distributions agree with SciPy', () => {
  it('normal, tails to full relative precision', () => {
    expect(worst(scipy.normal, normalCdf, 1e-300)).toBeLessThan(1e-12)
  })
  it('logarithm of the gamma function', () => {
    expect(worst(scipy.logGamma, logGamma)).toBeLessThan(1e-12)
  })
  it('incomplete beta function', () => {
    expect(worst(scipy.beta, (x, a, b) => incompleteBeta(x, a, b))).toBeLessThan(1e-10)
  })
  it('Student’s t, both ways', () => {
    expect(worst(scipy.student, twoSided)).toBeLessThan(1e-11)
    // SciPy's own quantile of t is off by up to 2e-9; going there and back is the sharper check.
    expect(worst(scipy.studentWithin, studentWithin)).toBeLessThan(5e-9)
    for (const [within = 0, df = 1] of scipy.studentWithin)
      expect(1 - twoSided(studentWithin(within, df), df)).toBeCloseTo(within, 14)
  })
  it('Fisher’s F', () => {
    expect(worst(scipy.fisher, fisherTail, 1e-20)).toBeLessThan(1e-10)
  })
  it('studentized range, both ways', () => {
    expect(worst(scipy.studentizedRange, studentizedRangeCdf, 1)).toBeLessThan(2e-8)
    expect(worst(scipy.studentizedRangeQuantile, studentizedRangeQuantile)).toBeLessThan(2e-8)
  })
  it('studentized maximum modulus, both ways', () => {
    expect(worst(scipy.maximumModulus, maximumModulusCdf, 1)).toBeLessThan(2e-8)
    for (const [m = 0, count = 1, df = 1, chance = 0] of scipy.maximumModulus)
      if (chance > 0.5 && chance < 0.999)
        expect(maximumModulusQuantile(chance, count, df) / m).toBeCloseTo(1, 7)
  })
  it('noncentral t', () => {
    expect(worst(scipy.noncentralT, noncentralTCdf, 1e-3)).toBeLessThan(1e-9)
  })
})

// R's qnorm and qt, and SciPy: test/reference/statsTests.json.
it.each(published.quantiles.t)('t quantile %d with %d degrees of freedom is %d', (at, df, expected) => {
  expect(studentWithin(2 * (at as number) - 1, df as number)).toBeCloseTo(expected as number, 7)
})
it.each(published.quantiles.z)('a share of %d lies below %d', (share, z) => {
  expect(normalCdf(z as number)).toBeCloseTo(share as number, 13)
})

// For two groups the studentized range is √2 |t|: an identity, whatever the program.
it.each([1, 2.5, 7, 40])('two groups with %d degrees of freedom are a t test', (df) => {
  for (const t of [0.2, 1, 3, 9])
    expect(1 - studentizedRangeCdf(t * Math.SQRT2, 2, df)).toBeCloseTo(twoSided(t, df), 9)
})

// The largest of one is Student's t: an identity, whatever the program.
it.each([1, 2.5, 7, 40])('the largest of one with %d degrees of freedom is a t test', (df) => {
  for (const t of [0.2, 1, 3, 9]) expect(1 - maximumModulusCdf(t, 1, df)).toBeCloseTo(twoSided(t, df), 9)
})
