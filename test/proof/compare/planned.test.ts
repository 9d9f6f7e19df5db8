import { expect, it } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { comparePoints } from '#proof/compare/method.ts'
import type { Point } from '#proof/compare/model.ts'
import { burnsToSettle } from '#proof/statistics/moreBurns.ts'
import { normalQuantile } from '#science/bands/spread.ts'

const SERIES = 200

// Burnt as often as it was told, a true difference shows at least four times out of five: by the method that is then in use,
// not by the formula of the plan. Rounding up to whole burns and Bonferroni's share make it somewhat more.
it.each([
  [2, 2, false],
  [2, 2, true],
  [3, 2.5, false],
  [3, 2.5, true],
  [6, 2, true],
] as const)(
  '%i variants, one off by %d spreads, in rounds: %s',
  (variants, difference, rounds) => {
    const stream = randomStream(1_969)
    const normal = (): number => normalQuantile(Math.min(Math.max(stream.uniform(), 1e-12), 1 - 1e-12))
    const pairs = (variants * (variants - 1)) / 2
    const burns = burnsToSettle(
      difference,
      [1, 1],
      undefined,
      1 - 0.05 / pairs,
      rounds ? (n) => (variants - 1) * (n - 1) : undefined,
    ) as number
    let shown = 0
    for (let n = 0; n < SERIES; n++) {
      const points = [...'ABCDEF'].slice(0, variants).flatMap((variant, v) =>
        Array.from(
          { length: burns },
          (_, i): Point => ({
            index: 100 * v + i,
            trial: '',
            variant,
            day: rounds ? `${i}` : '0',
            block: rounds ? `${i}` : '0',
            batch: null,
            placeInDay: null,
            value: 20 + (v === 0 ? difference : 0) + normal(),
            u: 0,
            mishap: false,
          }),
        ),
      )
      const found = comparePoints(points, 0.95, undefined).pairs('A', 'B')
      if (found !== null && found.low > 0) shown++
    }
    // Three standard deviations below four fifths: 0.8 − 3·√(0.8·0.2/200).
    expect(shown / SERIES).toBeGreaterThan(0.715)
    expect(shown / SERIES).toBeLessThan(0.98)
  },
  120_000,
)
