import { describe, expect, test } from 'vitest'
import { faultOf, missReasons } from '#scripts/validation/knownMisses.ts'
import { type BandRow, hits, offText, type PointRow, percent, shown } from '#scripts/validation/row.ts'

const point = (ours: number, more: Partial<PointRow> = {}): PointRow => ({
  check: 'invented',
  published: 100,
  ours,
  unit: 'Pa',
  allowed: { share: 0.01 },
  ...more,
})

const band = (published: BandRow['published']): BandRow => ({
  check: 'invented',
  published,
  ours: { low: 20, median: 25, high: 30, share: 1 },
  unit: '%',
  stove: '',
  source: '',
})

describe('a point', () => {
  test('hits within its share, on either side', () => {
    expect([98.9, 99.1, 100.9, 101.1].map((ours) => hits(point(ours)))).toEqual([false, true, true, false])
  })

  test('hits within a difference', () => {
    const allowed = { by: 2 }
    expect([97.9, 98.1, 102.1].map((ours) => hits(point(ours, { allowed })))).toEqual([false, true, false])
    expect(offText(point(101.5, { allowed }))).toBe('1.5 Pa')
  })

  test('leaves the rounding of the table aside', () => {
    expect(hits(point(101.4, { allowed: { share: 0.01, rounding: 0.5 } }))).toBe(true)
    expect(hits(point(101.6, { allowed: { share: 0.01, rounding: 0.5 } }))).toBe(false)
  })

  test('that is no number misses', () => {
    expect(hits(point(Number.NaN))).toBe(false)
  })
})

describe('a band', () => {
  test('hits what lies in it altogether; in part is a miss', () => {
    expect([band(25), band([21, 30]), band([28, 32]), band(31), band(19)].map(hits)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ])
  })

  test('says how far its nearer end is from what was published', () => {
    expect(offText(band([28, 32]))).toBe('in part')
    expect(offText(band(33))).toBe('−9 %')
    expect(offText(band([10, 16]))).toBe('+25 %')
  })
})

describe('a fault', () => {
  test('is a miss that is not known', () => {
    expect(faultOf(point(103))).toBe('invented misses: 3 %')
    expect(faultOf(point(100))).toBeNull()
  })

  test('is a known miss that passes', () => {
    const [check] = [...missReasons.keys()] as [string]
    expect(faultOf(point(103, { check }))).toBeNull()
    expect(faultOf(point(100, { check }))).toContain('take it out')
  })
})

describe('numbers as the page shows them', () => {
  test('six digits, a real minus, no idle zeros', () => {
    expect([1234.5678, -0.5, 0, 1e-9, 2.5e8, 22].map((value) => shown(value))).toEqual([
      '1234.57',
      '−0.5',
      '0',
      '1e−9',
      '2.5e8',
      '22',
    ])
  })

  test('shares in per cent, what is lost in rounding said to be less', () => {
    expect([0.0123, 0.6007, 1.34, 0, 3e-9].map(percent)).toEqual([
      '1.2 %',
      '60 %',
      '134 %',
      '< 0.001 %',
      '< 0.001 %',
    ])
  })
})
