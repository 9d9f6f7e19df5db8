import { describe, expect, test } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { quantile, sampleBands } from '#science/bands/bands.ts'
import { strongest } from '#science/bands/sensitivity.ts'
import { evenPoints } from '#science/bands/sequence.ts'
import { COEFFICIENT_KEYS, coefficientsAt, normalQuantile, valueAt } from '#science/bands/spread.ts'
import { coefficientTable, medianCoefficients } from '#science/coefficients.ts'

describe('the table of coefficients', () => {
  test.each(Object.entries(coefficientTable))('%s lies in order and says where it is from', (_, row) => {
    expect(row.low).toBeLessThan(row.median)
    expect(row.median).toBeLessThan(row.high)
    expect(row.meaning.length).toBeGreaterThan(10)
    expect(row.source.length).toBeGreaterThan(5)
    expect(valueAt(row, 0.05)).toBeCloseTo(row.low, 6)
    expect(valueAt(row, 0.5)).toBeCloseTo(row.median, 9)
    expect(valueAt(row, 0.95)).toBeCloseTo(row.high, 6)
  })

  test('the middle of the cube is the median set', () => {
    const middle = coefficientsAt(COEFFICIENT_KEYS.map(() => 0.5))
    for (const key of COEFFICIENT_KEYS) expect(middle[key]).toBeCloseTo(medianCoefficients[key], 9)
  })
})

test('normal quantiles as SciPy 1.10 gives them (scipy.stats.norm.ppf)', () => {
  for (const [u, z] of [
    [0.001, -3.090232306167813],
    [0.025, -1.9599639845400545],
    [0.05, -1.6448536269514729],
    [0.3, -0.5244005127080407],
    [0.5, 0],
    [0.9, 1.2815515655446004],
    [0.999, 3.090232306167813],
  ] as const)
    expect(normalQuantile(u)).toBeCloseTo(z, 7)
})

describe('even points', () => {
  const points = evenPoints(50, 7, 3)
  test('put one point in every slice of every axis', () => {
    for (let d = 0; d < 7; d++) {
      const slices = points.map((point) => Math.floor((point[d] as number) * 50)).sort((a, b) => a - b)
      expect(slices).toEqual(Array.from({ length: 50 }, (_, i) => i))
    }
  })
  test('are the same for the same seed and others for another', () => {
    expect(evenPoints(50, 7, 3)).toEqual(points)
    expect(evenPoints(50, 7, 4)).not.toEqual(points)
  })
})

describe('bands of a figure that is known', () => {
  const bands = sampleBands(
    ['ratio', 'never'],
    (coefficients) => ({
      outcome: coefficients.airPerFuelSlow > coefficientTable.airPerFuelSlow.median ? 'high' : 'low',
      figures: { ratio: coefficients.airPerFuelSlow, never: null },
    }),
    { samples: 400, seed: 5 },
  )

  test('are those of its coefficient', () => {
    const { low, median, high } = coefficientTable.airPerFuelSlow
    expect(bands.figures.ratio?.low).toBeCloseTo(low, 2)
    expect(bands.figures.ratio?.median).toBeCloseTo(median, 2)
    expect(bands.figures.ratio?.high).toBeCloseTo(high, 2)
    expect(bands.figures.never).toBeNull()
  })

  test('name the coefficient that moves it, and no other', () => {
    expect(bands.matters.ratio.map(({ coefficient }) => coefficient)).toEqual(['airPerFuelSlow'])
    expect(bands.matters.ratio[0]?.correlation).toBeCloseTo(1, 6)
  })

  test('count how the runs went', () => {
    expect(bands.outcomes.high).toBeCloseTo(0.5, 6)
  })
})

test('quantiles of five numbers', () => {
  expect(quantile([1, 2, 3, 4, 5], 0.5)).toBe(3)
  expect(quantile([1, 2, 3, 4, 5], 0.05)).toBeCloseTo(1.2, 12)
  expect(quantile([7], 0.9)).toBe(7)
})

describe('forty axes at fifty points', () => {
  const points = evenPoints(50, 41, 1)
  const axis = (d: number): readonly number[] => points.map((point) => (point[d] as number) - 0.5)
  const correlation = (a: readonly number[], b: readonly number[]): number => {
    const along = (x: readonly number[], y: readonly number[]): number =>
      x.reduce((sum, value, i) => sum + value * (y[i] as number), 0)
    return along(a, b) / Math.sqrt(along(a, a) * along(b, b))
  }

  test('run alongside each other no more than the jitter makes them', () => {
    // Plain shuffles of fifty give ±0.14 on average and 0.45 at worst.
    for (let a = 0; a < 41; a++)
      for (let b = 0; b < a; b++) expect(Math.abs(correlation(axis(a), axis(b)))).toBeLessThan(0.06)
  })

  test('name the three that make a result, in order, and no other', () => {
    const result = points.map((point) => 3 * point[7]! - 2 * point[20]! + point[33]! ** 3)
    const pulls = strongest(
      result,
      points[0]!.map((_, d) => axis(d)),
    )
    expect(pulls.map(({ axis: found }) => found)).toEqual([7, 20, 33])
    expect(pulls[1]?.correlation).toBeLessThan(0)
    // Shares of the variance of ranks.
    expect(pulls.reduce((sum, { correlation: r }) => sum + r * r, 0)).toBeLessThanOrEqual(1)
  })

  test('name none for pure chance, and none for too few runs', () => {
    const stream = randomStream(11)
    const axes = points[0]!.map((_, d) => axis(d))
    expect(
      strongest(
        points.map(() => stream.uniform()),
        axes,
      ),
    ).toEqual([])
    expect(
      strongest(
        [1, 2, 3],
        axes.map((values) => values.slice(0, 3)),
      ),
    ).toEqual([])
  })
})
