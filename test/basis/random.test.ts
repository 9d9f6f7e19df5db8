import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { randomStream, splitMix64, xoshiro128StarStar } from '#basis/random.ts'
import reference from '#reference/randomStreams.json' with { type: 'json' }

describe('output of the authors’ reference programs', () => {
  test(reference.xoshiro128starstar.source, () => {
    const next = xoshiro128StarStar(reference.xoshiro128starstar.state as [number, number, number, number])
    expect(reference.xoshiro128starstar.outputs.map(() => next())).toEqual(
      reference.xoshiro128starstar.outputs,
    )
  })

  test.each(reference.splitmix64)('$source', ({ seed, outputs }) => {
    const next = splitMix64(BigInt(seed))
    expect(outputs.map(() => String(next()))).toEqual(outputs)
  })
})

const seeds = fc.maxSafeInteger()
const draw = (stream: { uniform(): number }, count: number) =>
  Array.from({ length: count }, () => stream.uniform())

test('the same seed gives the same numbers, another seed others', () => {
  fc.assert(
    fc.property(seeds, seeds, (a, b) => {
      expect(draw(randomStream(a), 5)).toEqual(draw(randomStream(a), 5))
      if (a !== b) expect(draw(randomStream(a), 5)).not.toEqual(draw(randomStream(b), 5))
    }),
  )
})

test('a fork depends on seed and label, not on what was drawn before it', () => {
  fc.assert(
    fc.property(seeds, fc.string(), fc.nat(20), (seed, label, drawn) => {
      const used = randomStream(seed)
      draw(used, drawn)
      expect(draw(used.fork(label), 5)).toEqual(draw(randomStream(seed).fork(label), 5))
    }),
  )
})

test('forks differ from their parent, from each other and by order of labels', () => {
  const stream = randomStream(7)
  const paths = [
    stream,
    stream.fork('a'),
    stream.fork('b'),
    stream.fork(''),
    stream.fork(1),
    stream.fork(2),
    stream.fork('a').fork('b'),
    stream.fork('b').fork('a'),
    stream.fork('ab'),
  ]
  expect(new Set(paths.map((path) => path.uniform())).size).toBe(paths.length)
})

test('numbers stay in their bounds', () => {
  fc.assert(
    fc.property(seeds, fc.integer({ min: 1, max: 2 ** 32 }), (seed, count) => {
      const stream = randomStream(seed)
      const u = stream.uniform()
      expect(u).toBeGreaterThanOrEqual(0)
      expect(u).toBeLessThan(1)
      const whole = stream.integer(count)
      expect(Number.isInteger(whole)).toBe(true)
      expect(whole).toBeGreaterThanOrEqual(0)
      expect(whole).toBeLessThan(count)
      const between = stream.between(-3, 5)
      expect(between).toBeGreaterThanOrEqual(-3)
      expect(between).toBeLessThanOrEqual(5)
    }),
  )
})

/** Sum of (seen − expected)²/expected. Beyond 43.8 for 19 degrees of freedom once in a thousand seeds: this seed is fixed. */
const chiSquare = (seen: readonly number[], expected: number): number =>
  seen.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0)

test('twenty bins fill evenly, by uniform, by integer and across forks', () => {
  const stream = randomStream(20260101)
  const draws = 200_000
  const ways: readonly ((i: number) => number)[] = [
    () => Math.floor(stream.uniform() * 20),
    () => stream.integer(20),
    (i) => (i < 20_000 ? stream.fork(i).integer(20) : stream.integer(20)),
  ]
  for (const way of ways) {
    const bins = new Array<number>(20).fill(0)
    for (let i = 0; i < draws; i++) {
      const bin = way(i)
      bins[bin] = (bins[bin] as number) + 1
    }
    expect(chiSquare(bins, draws / 20)).toBeLessThan(43.8)
  }
})

test('a count that does not divide 2³² favours nobody', () => {
  // Of the values below 3·2³⁰, plain remainders would draw the lower third twice as often.
  const stream = randomStream(3)
  const count = 3 * 2 ** 30
  const lower = Array.from({ length: 30_000 }, () => stream.integer(count)).filter(
    (drawn) => drawn < 2 ** 30,
  ).length
  expect(lower / 30_000).toBeGreaterThan(0.32)
  expect(lower / 30_000).toBeLessThan(0.347)
})

test('every entry of a list gets picked, and an empty list is refused', () => {
  const stream = randomStream(1)
  expect(new Set(Array.from({ length: 100 }, () => stream.pick(['can', 'bit', 'vane']))).size).toBe(3)
  expect(() => stream.pick([])).toThrow(RangeError)
})

test.each([0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 60])('%d is no seed', (seed) => {
  expect(() => randomStream(seed)).toThrow(RangeError)
})

test.each([0, -1, 1.5, Number.NaN, 2 ** 33])('no whole number below %d', (count) => {
  expect(() => randomStream(1).integer(count)).toThrow(RangeError)
})
