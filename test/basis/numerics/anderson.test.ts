import { describe, expect, test } from 'vitest'
import { createAccelerator } from '#basis/numerics/anderson.ts'

/** Rounds until the map stops moving, with or without acceleration. */
const rounds = (g: (x: readonly number[]) => number[], start: readonly number[], depth: number): number => {
  const accelerator = createAccelerator(start.length, Math.max(1, depth))
  const x = Float64Array.from(start)
  for (let round = 1; round <= 2000; round++) {
    const gx = Float64Array.from(g([...x]))
    if (gx.every((value, i) => Math.abs(value - (x[i] as number)) < 1e-11)) return round
    if (depth === 0) x.set(gx)
    else accelerator.next(x, gx, 1)
  }
  return Number.POSITIVE_INFINITY
}

describe("Anderson's acceleration", () => {
  // x ← A x + b with contraction 0.9: plain repetition gains a digit in twenty rounds.
  const slow = ([x = 0, y = 0, z = 0]: readonly number[]): number[] => [
    0.9 * x + 0.1,
    0.5 * y + 0.2 * x + 1,
    -0.7 * z + 0.1 * y + 2,
  ]

  test('solves a linear map of three unknowns in a handful of rounds', () => {
    expect(rounds(slow, [0, 0, 0], 0)).toBeGreaterThan(150)
    expect(rounds(slow, [0, 0, 0], 4)).toBeLessThan(12)
  })

  test('finds the fixed point of the cosine, 0.7390851332 (Dottie number)', () => {
    const accelerator = createAccelerator(1, 3)
    const x = Float64Array.of(0)
    for (let i = 0; i < 12; i++) accelerator.next(x, Float64Array.of(Math.cos(x[0] as number)), 1)
    expect(x[0]).toBeCloseTo(0.7390851332151607, 12)
  })

  test('calms a map that swings for ever', () => {
    const swing = ([x = 0]: readonly number[]): number[] => [-x + 2]
    expect(rounds(swing, [5], 0)).toBe(Number.POSITIVE_INFINITY)
    expect(rounds(swing, [5], 2)).toBeLessThan(6)
  })
})
