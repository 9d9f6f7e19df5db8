import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { burnOrder } from '#proof/statistics/burnOrder.ts'
import { burnsForMean, burnsToSettle, power } from '#proof/statistics/moreBurns.ts'

describe('how many burns', () => {
  // test/reference/statsTests.json, replicates_advice: n iterated with t, after Wang et al. (2014).
  it.each([
    [0.1, 0.05, 18],
    [0.25, 0.25, 7],
    [0.1, 0.1, 7],
    [0.25, 0.1, 27],
  ])('a spread of %d wants, for a mean within %d, %i burns', (sd, half, n) => {
    expect(burnsForMean(sd, half)).toBe(n)
  })

  // Two-sided t test, alike spreads: with n burns each and with one fewer, by SciPy 1.10, stats.nct.sf(c, df, s) +
  // stats.nct.cdf(-c, df, s), df = 2n − 2, c = stats.t.ppf(0.975, df), s = d √(n/2).
  it.each([
    [0.8, 26, 0.8074866157939418, 0.7914512908175744],
    [0.5, 64, 0.8014595579287103, 0.7951683381304628],
  ])('a difference of %d spreads shows in four of five tries with %i burns each', (d, n, chance, fewer) => {
    expect(burnsToSettle(d, [1, 1])).toBe(n)
    expect(power(d, [1, 1], n)).toBeCloseTo(chance, 8)
    expect(power(d, [1, 1], n - 1)).toBeCloseTo(fewer, 8)
  })

  it('does not promise what cannot be had', () => {
    expect(burnsToSettle(0.01, [1, 1])).toBeNull()
    expect(burnsToSettle(0, [1, 1])).toBeNull()
    expect(burnsForMean(1, 0.001)).toBeNull()
    expect(burnsToSettle(1, [0, 0])).toBe(2)
  })

  // SciPy: nct at 2·√(n/2), t of (n − 1): 0.789 with 6, 0.874 with 7; of 2(n − 1): 0.791 with 5, 0.876 with 6.
  // In rounds the spread is judged by (variants − 1)(rounds − 1) degrees of freedom: two in four rounds leave 3, not 6.
  it('two in rounds want more burns than their spread alone would have it', () => {
    const paired = (burns: number): number => burns - 1
    expect(power(2, [1, 1], 4, 0.95, paired)).toBeLessThan(power(2, [1, 1], 4) - 0.1)
    expect(burnsToSettle(2, [1, 1], 0.8, 0.95, paired)).toBe(7)
    expect(burnsToSettle(2, [1, 1])).toBe(6)
  })

  it('no difference shows as often as the test errs', () => {
    expect(power(0, [1, 2], 5)).toBeCloseTo(0.05, 9)
  })
})

describe('the order to burn in', () => {
  const variants = fc.uniqueArray(fc.string({ minLength: 1 }), { minLength: 1, maxLength: 6 })

  it('every variant once a round; the same seed, the same order', () => {
    fc.assert(
      fc.property(variants, fc.integer({ min: 1, max: 5 }), fc.nat(), (names, rounds, seed) => {
        const order = burnOrder(names, rounds, randomStream(seed))
        expect(order.map(({ place }) => place)).toEqual(order.map((_, i) => i + 1))
        for (let round = 1; round <= rounds; round++)
          expect(
            order
              .filter((one) => one.round === round)
              .map((one) => one.variant)
              .sort(),
          ).toEqual([...names].sort())
        expect(burnOrder(names, rounds, randomStream(seed))).toEqual(order)
      }),
    )
  })

  it('no variant has a favoured place', () => {
    const first = { A: 0, B: 0, C: 0 }
    for (let seed = 0; seed < 3000; seed++) {
      const [burn] = burnOrder(['A', 'B', 'C'], 1, randomStream(seed))
      first[burn?.variant as 'A']++
    }
    // Four standard deviations of a fair draw: √(3000·2/9) = 25.8.
    for (const count of Object.values(first)) expect(Math.abs(count - 1000)).toBeLessThan(104)
  })
})
