import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { eliminateDominant, eliminatePivoted } from '#basis/numerics/elimination.ts'

const times = (a: readonly number[], n: number, x: readonly number[]): number[] =>
  Array.from({ length: n }, (_, r) => x.reduce((sum, value, c) => sum + (a[r * n + c] as number) * value, 0))

const entries = fc.double({ min: -1, max: 1, noNaN: true })
const system = fc.integer({ min: 1, max: 8 }).chain((n) =>
  fc.record({
    n: fc.constant(n),
    a: fc.array(entries, { minLength: n * n, maxLength: n * n }),
    x: fc.array(entries, { minLength: n, maxLength: n }),
  }),
)

describe('elimination', () => {
  test('a system worked by hand: 2x + y = 5, x + 3y = 10', () => {
    for (const solve of [eliminateDominant, eliminatePivoted]) {
      const x = Float64Array.of(5, 10)
      solve(Float64Array.of(2, 1, 1, 3), 2, x)
      expect(x[0]).toBeCloseTo(1, 14)
      expect(x[1]).toBeCloseTo(3, 14)
    }
  })

  test('gives back x from A x for diagonally dominant matrices', () => {
    fc.assert(
      fc.property(system, ({ n, a, x }) => {
        const dominant = a.map((value, i) => (i % (n + 1) === 0 ? value + Math.sign(value || 1) * n : value))
        for (const solve of [eliminateDominant, eliminatePivoted]) {
          const b = Float64Array.from(times(dominant, n, x))
          solve(Float64Array.from(dominant), n, b)
          for (const [i, value] of x.entries()) expect(b[i]).toBeCloseTo(value, 9)
        }
      }),
      { seed: 11 },
    )
  })

  test('pivoting solves what needs it, and says when nothing can', () => {
    const x = Float64Array.of(3, 4)
    expect(eliminatePivoted(Float64Array.of(0, 1, 1, 0), 2, x)).toBe(true)
    expect([...x]).toEqual([4, 3])
    expect(eliminatePivoted(Float64Array.of(1, 2, 2, 4), 2, Float64Array.of(1, 2))).toBe(false)
  })
})
