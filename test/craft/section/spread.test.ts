import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { spread } from '#craft/section/spread.ts'

const GAP = 4
const things = fc
  .array(
    fc.record({
      want: fc.double({ min: 0, max: 500, noNaN: true }),
      height: fc.double({ min: 5, max: 60, noNaN: true }),
    }),
    { maxLength: 12 },
  )
  .map((list) => list.toSorted((a, b) => a.want - b.want))

describe('a column of labels', () => {
  test('keeps order and distance, whatever is asked', () => {
    fc.assert(
      fc.property(things, (list) => {
        const tops = spread(list, GAP, 0, 500)
        expect(tops).toHaveLength(list.length)
        for (const [i, top] of tops.entries()) {
          const above = tops[i - 1]
          const height = list[i - 1]?.height
          if (above !== undefined && height !== undefined)
            expect(top - above - height).toBeGreaterThanOrEqual(GAP - 1e-9)
        }
      }),
    )
  })

  test('keeps within its bounds when everything fits', () => {
    fc.assert(
      fc.property(things, (list) => {
        const needed = list.reduce((sum, { height }) => sum + height + GAP, -GAP)
        fc.pre(needed <= 500)
        const tops = spread(list, GAP, 0, 500)
        for (const [i, top] of tops.entries()) {
          expect(top).toBeGreaterThanOrEqual(-1e-9)
          expect(top + (list[i]?.height ?? 0)).toBeLessThanOrEqual(500 + 1e-9)
        }
      }),
    )
  })

  test('leaves alone what is apart already', () => {
    const list = [
      { want: 50, height: 20 },
      { want: 200, height: 40 },
    ]
    expect(spread(list, GAP, 0, 500)).toEqual([40, 180])
  })

  test('parts two that want the same place evenly', () => {
    const list = [
      { want: 100, height: 20 },
      { want: 100, height: 20 },
    ]
    // Together 44 high: least squares puts their common middle on 100.
    expect(spread(list, GAP, 0, 500)).toEqual([78, 102])
  })

  test('moves a crowd up from the lower bound', () => {
    const list = Array.from({ length: 3 }, () => ({ want: 495, height: 20 }))
    expect(spread(list, GAP, 0, 500)).toEqual([432, 456, 480])
  })
})
