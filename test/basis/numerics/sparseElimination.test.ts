import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { planElimination } from '#basis/numerics/sparseElimination.ts'

const entries = fc.double({ min: -1, max: 1, noNaN: true })
const system = fc.integer({ min: 1, max: 9 }).chain((n) => {
  const unknown = fc.integer({ min: 0, max: n - 1 })
  return fc.record({
    n: fc.constant(n),
    couplings: fc.array(fc.tuple(unknown, unknown, entries, entries), { maxLength: 2 * n }),
    x: fc.array(entries, { minLength: n, maxLength: n }),
  })
})

describe('sparse elimination', () => {
  test('a system worked by hand: 2x + y = 5, x + 3y = 10', () => {
    const plan = planElimination(2, [[0, 1]])
    const a = new Float64Array(plan.places)
    for (const [row, column, value] of [
      [0, 0, 2],
      [0, 1, 1],
      [1, 0, 1],
      [1, 1, 3],
    ] as const)
      a[plan.place(row, column)] = value
    const x = Float64Array.of(5, 10)
    expect(plan.solve(a, x)).toBe(true)
    expect(x[0]).toBeCloseTo(1, 14)
    expect(x[1]).toBeCloseTo(3, 14)
  })

  test('gives back x from A x for diagonally dominant matrices of any pattern', () => {
    fc.assert(
      fc.property(system, ({ n, couplings, x }) => {
        const plan = planElimination(
          n,
          couplings.map(([i, j]) => [i, j] as const),
        )
        const a = new Float64Array(plan.places)
        const b = new Float64Array(n)
        const add = (row: number, column: number, value: number): void => {
          const at = plan.place(row, column)
          a[at] = (a[at] as number) + value
          b[row] = (b[row] as number) + value * (x[column] as number)
        }
        for (let i = 0; i < n; i++) add(i, i, 4 * n)
        for (const [i, j, there, back] of couplings) {
          if (i === j) continue
          add(i, j, there)
          add(j, i, back)
        }
        expect(plan.solve(a, b)).toBe(true)
        for (const [i, value] of x.entries()) expect(b[i]).toBeCloseTo(value, 12)
      }),
      { seed: 11 },
    )
  })

  test('a chain of unknowns fills no entry but its own, whatever the numbering', () => {
    const chain = [3, 0, 4, 1, 5, 2]
    const pairs = chain.slice(1).map((next, i) => [chain[i] as number, next] as const)
    expect(planElimination(6, pairs).places).toBe(6 + 2 * 5 + 1)
  })

  test('an unknown outside has its entries in the bin, which no solution feels', () => {
    const plan = planElimination(1, [[0, -1]])
    const a = new Float64Array(plan.places)
    expect(plan.place(0, -1)).toBe(plan.places - 1)
    expect(plan.place(-1, -1)).toBe(plan.places - 1)
    a[plan.place(0, 0)] = 2
    a[plan.place(0, -1)] = 7
    const x = Float64Array.of(3, 99)
    plan.solve(a, x)
    expect([...x]).toEqual([1.5, 99])
  })

  test('says when a pivot vanishes', () => {
    const plan = planElimination(2, [[0, 1]])
    const a = new Float64Array(plan.places).fill(1)
    expect(plan.solve(a, Float64Array.of(1, 2))).toBe(false)
  })

  test('a place that was not planned is refused', () => {
    expect(() => planElimination(3, [[0, 1]]).place(0, 2)).toThrow('no pair couples unknowns 0 and 2')
  })
})
