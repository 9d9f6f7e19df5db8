import { describe, expect, test } from 'vitest'
import { toMillimetres } from '#basis/units.ts'
import fractions from '#reference/drillFractions.json' with { type: 'json' }
import sizes from '#reference/drillSizes.json' with { type: 'json' }
import { LETTER_BITS, NUMBER_BITS } from '#stove/bit/designations.ts'
import { FRACTIONAL_BITS, METRIC_BITS, METRIC_HAND_SETS, STEP_DRILLS } from '#stove/bit/series.ts'
import type { Bit } from '#stove/model.ts'

type Row = [size: string, inches: number, millimetres: number]

const check = (bits: readonly Bit[], name: string, millimetres: number): void => {
  const bit = bits.find((one) => one.name === name)
  expect(bit, name).toBeDefined()
  expect(toMillimetres(bit!.diameter)).toBeCloseTo(millimetres, 6)
}

// ASME B94.11M, as cross-checked in the reference file.
describe('inch sizes', () => {
  test('97 number sizes', () => {
    expect(NUMBER_BITS).toHaveLength(97)
    for (const [size, , millimetres] of sizes.number as Row[]) check(NUMBER_BITS, `#${size}`, millimetres)
  })

  test('26 letter sizes', () => {
    expect(LETTER_BITS).toHaveLength(26)
    for (const [size, , millimetres] of sizes.letter as Row[])
      check(LETTER_BITS, `letter ${size}`, millimetres)
  })

  test('64 fractional sizes', () => {
    expect(FRACTIONAL_BITS).toHaveLength(64)
    for (const [size, , millimetres] of fractions.rows as Row[])
      check(FRACTIONAL_BITS, `${size} in`, millimetres)
  })

  test.each(sizes.spotChecks as { size: string; mm?: number; in?: number }[])(
    '$size',
    ({ size, mm, in: inches }) => {
      const all = [...NUMBER_BITS, ...LETTER_BITS, ...FRACTIONAL_BITS]
      const found = all.find(({ name }) => [size, `letter ${size}`, `${size} in`].includes(name))
      expect(toMillimetres(found!.diameter)).toBeCloseTo(mm ?? inches! * 25.4, 6)
    },
  )

  test('numbers shrink as they rise, and letters go on where numbers end', () => {
    for (const [index, bit] of NUMBER_BITS.slice(1).entries())
      expect(bit.diameter).toBeLessThan(NUMBER_BITS[index]!.diameter)
    const up = [NUMBER_BITS[0]!, ...LETTER_BITS]
    for (const [index, bit] of up.slice(1).entries())
      expect(bit.diameter).toBeGreaterThan(up[index]!.diameter)
  })
})

describe('series', () => {
  test('metric stock sizes have the steps of their rule and no gap where the step changes', () => {
    const hundredths = METRIC_BITS.map(({ diameter }) => Math.round(toMillimetres(diameter) * 100))
    expect(hundredths[0]).toBe(20)
    expect(hundredths.at(-1)).toBe(3200)
    for (const [index, size] of hundredths.slice(1).entries()) {
      const step = size - hundredths[index]!
      expect(step).toBe(size <= 300 ? 5 : size <= 1400 ? 10 : 25)
    }
    // 57 sizes to 3 mm, 110 to 14 mm, 72 to 32 mm
    expect(METRIC_BITS).toHaveLength(57 + 110 + 72)
    expect(new Set(METRIC_BITS.map(({ name }) => name)).size).toBe(METRIC_BITS.length)
  })

  test('hand sets are 19 and 25 bits by halves of a millimetre', () => {
    expect(METRIC_HAND_SETS.map((set) => set.length)).toEqual([19, 25])
    expect(METRIC_HAND_SETS[0]!.map(({ name }) => name).slice(0, 3)).toEqual(['1 mm', '1.5 mm', '2 mm'])
  })

  // Number of steps as the sets are sold, from memory: it shows the arithmetic of the sets, not a fact.
  test.each([
    ['step drill 1/8 in to 1/2 in', 13, '5/32 in step'],
    ['step drill 3/16 in to 1/2 in', 6, '1/4 in step'],
    ['step drill 1/4 in to 3/4 in', 9, '5/16 in step'],
    ['step drill 1/4 in to 1 3/8 in', 10, '3/8 in step'],
    ['step drill 3/16 in to 7/8 in', 12, '1/4 in step'],
    ['step drill 4 to 20 mm by 2', 9, '6 mm step'],
    ['step drill 4 to 32 mm by 2', 15, '6 mm step'],
    ['step drill 6 to 30 mm by 2', 13, '8 mm step'],
  ])('%s has %i steps', (name, count, second) => {
    const drill = STEP_DRILLS.find((one) => one.name === name)
    expect(drill?.steps).toHaveLength(count)
    expect(drill?.steps[1]?.name).toBe(second)
  })
})
