import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { toMillimetres } from '#basis/units.ts'
import { LETTER_BITS, NUMBER_BITS } from '#stove/bit/designations.ts'
import { readBit } from '#stove/bit/readBit.ts'
import { FRACTIONAL_BITS, METRIC_BITS, STEP_DRILLS } from '#stove/bit/series.ts'

const bit = (text: unknown) => orThrow(readBit(text, 'bits.0'))

describe('readBit', () => {
  test.each([
    ['6 mm', '6 mm', 6],
    ['6.50 mm', '6.5 mm', 6.5],
    ['0.6 cm', '6 mm', 6],
    ['5/8 in', '5/8 in', 15.875],
    ['5/8"', '5/8 in', 15.875],
    ['⅝ in', '5/8 in', 15.875],
    ['10/16 inch', '5/8 in', 15.875],
    ['1-1/8 in', '1 1/8 in', 28.575],
    ['0.201 in', '0.201 in', 5.1054],
    ['5/8 in (16 mm)', '5/8 in', 15.875],
    ['16 mm (5/8 in)', '16 mm', 16],
    // Number and letter sizes: ASME B94.11M.
    ['#7', '#7', 5.1054],
    ['# 7', '#7', 5.1054],
    ['No. 7', '#7', 5.1054],
    ['number 60', '#60', 1.016],
    ['E', 'letter E', 6.35],
    ['e', 'letter E', 6.35],
    ['letter Z', 'letter Z', 10.4902],
    ['16 mm step', '16 mm step', 16],
    ['1/2 in step', '1/2 in step', 12.7],
  ])('%s is %s, %f mm', (text, name, millimetres) => {
    expect(bit(text).name).toBe(name)
    expect(toMillimetres(bit(text).diameter)).toBeCloseTo(millimetres, 9)
  })

  test('reads every bit of every table back by its own name', () => {
    const all = [
      ...NUMBER_BITS,
      ...LETTER_BITS,
      ...FRACTIONAL_BITS,
      ...METRIC_BITS,
      ...STEP_DRILLS.flatMap(({ steps }) => steps),
    ]
    fc.assert(
      fc.property(fc.constantFrom(...all), (owned) => {
        expect(bit(owned.name).name).toBe(owned.name)
        expect(bit(owned.name).diameter).toBeCloseTo(owned.diameter, 12)
      }),
      { numRuns: 400 },
    )
  })

  test.each([
    '7',
    '#0',
    '#98',
    '#07',
    'letter',
    'letter EE',
    'EE',
    '',
    'step',
    '16 step',
    '5/8 in (14 mm)',
    '6 kg',
    '-6 mm',
    '900 mm',
  ])('refuses %j', (text) => {
    const outcome = readBit(text, 'bits.0')
    expect(outcome.ok).toBe(false)
    if (!outcome.ok) expect(outcome.problems[0]?.field).toBe('bits.0')
  })

  test.each([7, null, undefined, {}, ['6 mm'], Number.NaN])('refuses what is not text: %j', (value) => {
    expect(readBit(value, 'bits.0').ok).toBe(false)
  })

  test('says which numbers there are', () => {
    const outcome = readBit('#98', 'bits.0')
    expect(outcome.ok ? '' : outcome.problems[0]?.allowed).toContain('#1 (5.8 mm) to #97')
  })
})
