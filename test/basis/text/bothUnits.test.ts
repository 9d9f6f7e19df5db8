import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  closely,
  long,
  onRule,
  onRuleAtLeast,
  onRuleAtMost,
  slack,
  span,
  wide,
} from '#basis/text/bothUnits.ts'
import { readLength } from '#basis/text/length.ts'
import { fromMillimetres as mm } from '#basis/units.ts'

test('a span says the smaller length first, and a length that reads the same only once', () => {
  expect(span(mm(10.6), mm(8.6))).toBe('8.6 mm (11/32 in) to 10.6 mm (27/64 in)')
  expect(span(mm(8.61), mm(8.59))).toBe('8.6 mm (11/32 in)')
})

test('closely enough that near misses differ, and no digit more than it takes', () => {
  expect(closely(mm(97.36))).toBe('97.36 mm (3 13/16 in)')
  expect(closely(mm(97.4))).toBe('97.4 mm (3 13/16 in)')
  expect(closely(mm(97))).toBe('97 mm (3 13/16 in)')
  expect(closely(mm(0.2))).toBe('0.2 mm (0.008 in)')
  expect(closely(0)).toBe('0 mm (0 in)')
})

test('how far something may be off, in marks of a rule where it has them', () => {
  expect([1, 0.5, 0.3, 2].map((off) => slack(mm(off)))).toEqual([
    '1 mm (3/64 in)',
    '0.5 mm (1/64 in)',
    '0.3 mm (1/64 in)',
    '2 mm (5/64 in)',
  ])
  expect(slack(mm(0.1))).toBe('0.1 mm (0.004 in)')
})

test('an area in both units', () => {
  expect(wide(574e-6)).toBe('574 mm² (0.89 in²)')
  expect(wide(7.07e-6)).toBe('7.1 mm² (0.01 in²)')
  expect(wide(6452e-6)).toBe('6452 mm² (10.0 in²)')
})

describe('distances to set out with a rule', () => {
  // 23 mm is 28.98 thirty-seconds, 24 mm 15.12 sixteenths, 22 mm 13.86, 60 mm 37.80, 59 mm 37.17; 5 mm is 6.30 thirty-seconds.
  test.each([
    [22.5, '23 mm (29/32 in)', '24 mm (15/16 in)', '22 mm (7/8 in)'],
    [60, '60 mm (2 3/8 in)', '60 mm (2 3/8 in)', '59 mm (2 5/16 in)'],
    [5.2, '5 mm (3/16 in)', '6 mm (1/4 in)', '5 mm (3/16 in)'],
    [6.35, '6 mm (1/4 in)', '8 mm (5/16 in)', '6 mm (1/4 in)'],
    [25.4, '25 mm (1 in)', '26 mm (1 in)', '25 mm (1 in)'],
    [20, '20 mm (25/32 in)', '21 mm (13/16 in)', '19 mm (3/4 in)'],
    [10.04, '10 mm (3/8 in)', '11 mm (7/16 in)', '10 mm (3/8 in)'],
    // Below a sixteenth nobody sets anything out with a rule.
    [0.79, '0.79 mm (0.031 in)', '0.79 mm (0.031 in)', '0.79 mm (0.031 in)'],
  ])('%d mm: nearest %s, at least %s, at most %s', (length, nearest, least, most) => {
    expect(onRule(mm(length))).toBe(nearest)
    expect(onRuleAtLeast(mm(length))).toBe(least)
    expect(onRuleAtMost(mm(length))).toBe(most)
  })

  const halves = (text: string): readonly number[] => {
    const [, first = '', second = ''] = /^(.*) \((.*)\)$/.exec(text) ?? []
    return [first, second].map((half) => {
      const outcome = readLength(half, 'x', 'clearance')
      if (!outcome.ok) throw new Error(`${half} of ${text} does not read`)
      return outcome.value
    })
  }

  test('neither half of a least falls below it, neither half of a greatest goes above it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.002, max: 0.3, noNaN: true }), (length) => {
        for (const half of halves(onRuleAtLeast(length))) expect(half).toBeGreaterThan(length - 1e-8)
        for (const half of halves(onRuleAtMost(length))) expect(half).toBeLessThan(length + 1e-8)
      }),
    )
  })

  test('both halves are one length: copied into a stove file the advice is read', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0017, max: 0.39, noNaN: true }), (length) => {
        for (const said of [onRule(length), onRuleAtLeast(length), onRuleAtMost(length)])
          expect(readLength(said, 'x', 'clearance').ok, said).toBe(true)
      }),
    )
  })

  test('a least is no more than three millimetres off, a nearest no more than half of one', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0017, max: 0.39, noNaN: true }), (length) => {
        const [least, most, near] = [onRuleAtLeast, onRuleAtMost, onRule].map(
          (say) => halves(say(length))[0] as number,
        )
        expect(Math.abs((least as number) - length)).toBeLessThan(0.0031)
        expect(Math.abs((most as number) - length)).toBeLessThan(0.0031)
        expect(Math.abs((near as number) - length)).toBeLessThan(0.00051)
      }),
    )
  })

  test('no mark that a rule has not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0017, max: 0.3, noNaN: true }), (length) => {
        expect(onRule(length)).not.toContain('/64')
        if (length > 0.0065) expect(onRuleAtLeast(length)).not.toContain('/32')
      }),
    )
  })

  test('a bit keeps its sixty-fourths', () => expect(long(mm(9))).toBe('9 mm (23/64 in)'))
})
