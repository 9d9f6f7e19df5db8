import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { compare } from '#proof/compare/compare.ts'
import { measuredTrial } from '#proof/compare/measured.ts'
import type { MetricComparison } from '#proof/compare/model.ts'
import scipy from '#reference/seriesScipy.json' with { type: 'json' }
import { SERIES_VARIANTS } from '#scripts/series/variants.ts'
import { needs } from '../../outsideProgram.ts'
import { seriesTexts, seriesTrials } from './seriesTrials.ts'

const comparison = compare(seriesTrials)
const question = comparison.metrics.find(
  ({ metric }) => metric.id === comparison.question,
) as MetricComparison
const verdictOf = (letter: string) => {
  const found = comparison.verdicts.find(({ variant }) => variant.startsWith(letter))
  if (found === undefined) throw new Error(`No ${letter}`)
  return found
}
const near = (value: number | undefined, expected: number, tolerance: number): void =>
  expect(Math.abs((value as number) - expected)).toBeLessThanOrEqual(
    tolerance * Math.max(1, Math.abs(expected)),
  )

// Invented demo data; what is true of each variant stands in scripts/series/variants.ts.
describe('the demo series: the comparison tells what helps from what was lucky', () => {
  it('holds six variants, four burns of each, and nothing to warn of', () => {
    expect(comparison.variants.map(({ burns }) => burns)).toEqual([4, 4, 4, 4, 4, 4])
    expect(comparison.warnings).toEqual([])
    expect(comparison.question).toBe('high power/timeToBoilT')
    expect(question.method).toMatchObject({ kind: 'blocked', blockedBy: ['block', 'batch'] })
  })

  it.each([
    ['B', 'better'],
    ['C', 'open'],
    ['D', 'worse'],
    ['E', 'open'],
    ['F', 'open'],
  ])('%s: %s', (letter, verdict) => {
    expect(verdictOf(letter).verdict).toBe(verdict)
  })

  it('the lucky one looks better than any that does nothing, and would pass a test of its own', () => {
    const lucky = question.contrasts.find(
      ({ variant, against }) => variant.startsWith('C') && against.startsWith('A'),
    )
    expect(lucky?.relative).toBeLessThan(-0.06)
    // Paired by day with A and nothing else: p of scipy.stats.ttest_rel.
    expect(scipy.compared.timeToBoilT.naive.p).toBeLessThan(0.05)
    expect(lucky?.sentence).toContain('that may be luck')
    expect(lucky?.moreSentence).toMatch(/burns of each, \d+ more, would show it four times out of five/)
    expect(verdictOf('C').better).toEqual([])
  })

  it('what the story has of each variant lies in its interval', () => {
    for (const { variant, truth } of SERIES_VARIANTS.slice(1)) {
      const found = question.contrasts.find((one) => one.variant === variant && one.against.startsWith('A'))
      const base = question.variants[0]?.mean as number
      const told = base / truth.power - base
      expect(found?.difference?.low).toBeLessThan(told)
      expect(found?.difference?.high).toBeGreaterThan(told)
    }
  })

  it('every file says that it is invented', () => {
    for (const text of Object.values(seriesTexts)) expect(text).toMatch(/[Ii]nvented demo data/)
  })
})

// Source: an independent program, test/reference/generators/series_scipy.py.
describe('the same numbers from SciPy', () => {
  it('every metric of every burn', () => {
    expect(Object.keys(scipy.burns)).toHaveLength(seriesTrials.length)
    for (const trial of seriesTrials) {
      const { metrics } = measuredTrial(trial)
      const expected = scipy.burns[trial.name as keyof typeof scipy.burns]
      for (const [key, value] of Object.entries(expected))
        near(metrics.get(`high power/${key}`)?.value, value, 1e-10)
    }
  })

  it.each(comparison.metrics.map((one) => [one.metric.key, one] as const))(
    '%s',
    (key, { contrasts, variants, drift }) => {
      const expected = scipy.compared[key as keyof typeof scipy.compared]
      for (const { variant, mean, sd } of variants) {
        near(mean, expected.means[variant as keyof typeof expected.means], 1e-10)
        near(sd ?? Number.NaN, expected.sds[variant as keyof typeof expected.sds], 1e-9)
      }
      expect(contrasts).toHaveLength(expected.pairs.length)
      for (const [variant, against, value, error, low, high, p] of expected.pairs as [
        string,
        string,
        number,
        number,
        number,
        number,
        number,
      ][]) {
        const found = contrasts.find((one) => one.variant === variant && one.against === against)?.difference
        near(found?.value, value, 1e-9)
        near(found?.standardError, error, 1e-9)
        expect(found?.df).toBe(expected.df)
        // SciPy's studentized range is good to about 1e-8.
        near(found?.low, low, 1e-6)
        near(found?.high, high, 1e-6)
        near(found?.p, p, 1e-6)
      }
      // How many burns of each would show what C and A seem to differ by.
      const looks = contrasts.find(
        ({ variant, against }) => variant.startsWith('C') && against.startsWith('A'),
      )
      expect(looks?.more?.forThisDifference).toBe(expected.settle)
      const [slope, error, df] = expected.drift as [number, number, number]
      near(drift?.slope.value, slope, 1e-9)
      near(drift?.slope.standardError, error, 1e-9)
      expect(drift?.slope.df).toBe(df)
    },
  )

  it('without the days: Welch pair by pair, and Tukey', () => {
    for (const [method, rows] of [
      ['welch', scipy.compared.timeToBoilT.welchWithoutDays],
      ['tukey', scipy.compared.timeToBoilT.tukeyWithoutDays],
    ] as const) {
      const { metrics } = compare(seriesTrials, { method })
      const found = metrics.find(({ metric }) => metric.key === 'timeToBoilT') as MetricComparison
      for (const [variant, against, statistic, p] of rows as [string, string, number, number][]) {
        const { difference } =
          found.contrasts.find((one) => one.variant === variant && one.against === against) ?? {}
        near(method === 'welch' ? difference?.t : difference?.value, statistic, 1e-9)
        near(difference?.p, p, 1e-7)
      }
      if (method === 'tukey')
        near(found.method.unlikeSpreads ?? Number.NaN, scipy.compared.timeToBoilT.bartlett, 1e-9)
    }
  })

  it('the program still comes to what is kept', (context) => {
    needs(context, 'scipy')
    const script = fileURLToPath(new URL('../../reference/generators/series_scipy.py', import.meta.url))
    const { status, stdout, stderr } = spawnSync('/usr/bin/python3', [script, '--check'], {
      encoding: 'utf8',
    })
    expect({ status, stdout: stdout.trim(), stderr }).toEqual({
      status: 0,
      stdout: '24 burns, 15 metrics: as kept',
      stderr: '',
    })
  })
})
