import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findRoot, type Sample } from '#basis/numerics/bisectNewton.ts'
import reference from '#reference/roots.json' with { type: 'json' }

const SIGMA_EPSILON = 5.67e-8 * 0.8

/** Function and slope, and the bracket roots.py searched. */
const functions: Readonly<Record<string, { f: (x: number) => Sample; from: number; to: number }>> = {
  cosine: { f: (x) => ({ value: Math.cos(x) - x, slope: -Math.sin(x) - 1 }), from: 0, to: 1 },
  cubic: { f: (x) => ({ value: x ** 3 - 2 * x - 5, slope: 3 * x ** 2 - 2 }), from: 2, to: 3 },
  omega: { f: (x) => ({ value: x * Math.exp(x) - 1, slope: (1 + x) * Math.exp(x) }), from: 0, to: 1 },
  'radiating wall': {
    f: (x) => ({
      value: SIGMA_EPSILON * (x ** 4 - 293.15 ** 4) + 8 * (x - 293.15) - 4000,
      slope: 4 * SIGMA_EPSILON * x ** 3 + 8,
    }),
    from: 293.15,
    to: 2000,
  },
  bed: { f: (x) => ({ value: 19380 * x + 5650 * x ** 2 - 240, slope: 19380 + 11300 * x }), from: 0, to: 1 },
  // Upright at the root, as flow through an orifice against pressure: Newton alone jumps from side to side for ever.
  orifice: {
    f: (x) => ({
      value: Math.sign(x - 0.7) * Math.sqrt(Math.abs(x - 0.7)),
      slope: 0.5 / Math.sqrt(Math.abs(x - 0.7)),
    }),
    from: 0,
    to: 2,
  },
  // Flat away from the root: Newton alone leaves the bracket.
  steep: {
    f: (x) => ({ value: Math.atan(1e6 * (x - 0.3)), slope: 1e6 / (1 + (1e6 * (x - 0.3)) ** 2) }),
    from: 0,
    to: 1,
  },
  wide: { f: (x) => ({ value: Math.log(x) - 11, slope: 1 / x }), from: 1e-6, to: 1e9 },
}

describe(`roots found by ${reference.source}`, () => {
  test.each(reference.rows as [string, number][])('%s: %d', (name, expected) => {
    const { f, from, to } = functions[name] as (typeof functions)[string]
    for (const [a, b] of [
      [from, to],
      [to, from],
    ] as const) {
      const root = findRoot(f, { from: a, to: b, tolerance: 0 })
      expect(root.ok).toBe(true)
      expect(Math.abs(root.x - expected)).toBeLessThanOrEqual(1e-14 * expected)
      expect(root.evaluations).toBeLessThan(80)
    }
  })
})

test('finds the root without any slope, by halving', () => {
  const root = findRoot((x) => ({ value: x ** 3 - 2 * x - 5, slope: Number.NaN }), {
    from: 2,
    to: 3,
    tolerance: 1e-9,
  })
  expect(root.ok).toBe(true)
  expect(root.x).toBeCloseTo(2.0945514815423265, 9)
})

test('a smooth function takes Newton’s few steps, not fifty halvings', () => {
  const root = findRoot((functions.omega as { f: (x: number) => Sample }).f, {
    from: 0,
    to: 1,
    tolerance: 1e-12,
  })
  expect(root.evaluations).toBeLessThanOrEqual(10)
})

test('the answer is within the tolerance of the root of any rising cubic, whatever slope it is told', () => {
  const anywhere = fc.double({ min: -50, max: 50, noNaN: true })
  fc.assert(
    fc.property(
      anywhere,
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.constantFrom(1e-3, 1e-6, 1e-10),
      fc.double(),
      fc.boolean(),
      (root, bend, tolerance, wrongSlope, honest) => {
        const found = findRoot(
          (x) => ({
            value: (x - root) * (1 + bend * (x - root) ** 2),
            slope: honest ? 1 + 3 * bend * (x - root) ** 2 : wrongSlope,
          }),
          { from: -60, to: 70, tolerance },
        )
        expect(found.ok).toBe(true)
        expect(Math.abs(found.x - root)).toBeLessThanOrEqual(tolerance + 1e-13)
      },
    ),
  )
})

test.each([
  ['no change of sign', (x: number) => ({ value: x * x + 1, slope: 2 * x }), 100, 'bracket'],
  [
    'a pole of not-a-number',
    (x: number) => ({ value: x < 0.5 ? Number.NaN : 1, slope: 1 }),
    100,
    'not finite',
  ],
  [
    'a hole inside',
    (x: number) => ({ value: x === 0 || x === 1 ? x - 0.5 : Number.NaN, slope: 0 }),
    100,
    'not finite',
  ],
  ['too few evaluations', (x: number) => ({ value: x ** 3 - 0.1, slope: 0 }), 5, 'slow'],
] as const)('%s is a typed failure', (_, f, mostEvaluations, reason) => {
  const root = findRoot(f, { from: 0, to: 1, tolerance: 1e-12, mostEvaluations })
  expect(root).toMatchObject({ ok: false, reason })
  expect(root.evaluations).toBeLessThanOrEqual(mostEvaluations)
})

test('ends that are no numbers are a typed failure', () => {
  const search = { from: Number.NaN, to: 1, tolerance: 1e-9 }
  expect(findRoot((x) => ({ value: x, slope: 1 }), search)).toMatchObject({ ok: false, reason: 'not finite' })
})
