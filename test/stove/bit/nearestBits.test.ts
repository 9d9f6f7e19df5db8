import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fromMillimetres as mm, toMillimetres } from '#basis/units.ts'
import { nearestBits } from '#stove/bit/nearestBits.ts'

const owned = (...sizes: number[]) => sizes.map((size) => ({ name: `${size} mm`, diameter: mm(size) }))

describe('nearestBits', () => {
  test('of a drawer of bits in any order, the next below and above', () => {
    const { below, above } = nearestBits(mm(6.2), owned(10, 5, 6, 8, 6.5))
    expect([below?.name, above?.name]).toEqual(['6 mm', '6.5 mm'])
  })

  test('one that fits is both', () => {
    // 1/4 in is letter E: 6.35 mm.
    const { below, above } = nearestBits(mm(6.35), [
      { name: '1/4 in', diameter: mm(0.25 * 25.4) },
      ...owned(6, 7),
    ])
    expect([below?.name, above?.name]).toEqual(['1/4 in', '1/4 in'])
  })

  test('nothing below the smallest, above the largest, or in an empty drawer', () => {
    expect(nearestBits(mm(1), owned(2, 3)).below).toBeNull()
    expect(nearestBits(mm(4), owned(2, 3)).above).toBeNull()
    expect(nearestBits(mm(4), [])).toEqual({ below: null, above: null })
  })

  test('leaves no owned bit between itself and the wanted size', () => {
    const tenths = fc.integer({ min: 1, max: 300 })
    fc.assert(
      fc.property(tenths, fc.array(tenths), (wanted, drawer) => {
        const bits = owned(...drawer.map((size) => size / 10))
        const { below, above } = nearestBits(mm(wanted / 10), bits)
        const size = (bit: (typeof bits)[number] | null) =>
          bit === null ? null : Math.round(toMillimetres(bit.diameter) * 10)
        const smaller = drawer.filter((one) => one <= wanted)
        const larger = drawer.filter((one) => one >= wanted)
        expect(size(below)).toBe(smaller.length === 0 ? null : Math.max(...smaller))
        expect(size(above)).toBe(larger.length === 0 ? null : Math.min(...larger))
      }),
    )
  })
})
