import type { Sample } from './sample.ts'
import { chiSquareTail } from './special/chiSquare.ts'

/**
 * Bartlett's test: chance of spreads as unlike as these if all groups truly spread alike [bib:bartlett1937] [1].
 * It asks for values that are about normal. Null for fewer than two groups or a group with fewer than two values; 0
 * where one group does not spread at all and another does.
 */
export const equalSpreads = (samples: readonly Sample[]): number | null => {
  const k = samples.length
  if (k < 2 || samples.some(({ count }) => count < 2)) return null
  if (samples.every(({ variance }) => variance === 0)) return 1
  if (samples.some(({ variance }) => variance === 0)) return 0
  const free = samples.map(({ count }) => count - 1)
  const all = free.reduce((sum, one) => sum + one, 0)
  const together = samples.reduce((sum, { variance }, i) => sum + (free[i] as number) * variance, 0) / all
  const unlike =
    all * Math.log(together) -
    samples.reduce((sum, { variance }, i) => sum + (free[i] as number) * Math.log(variance), 0)
  const correction = 1 + (free.reduce((sum, one) => sum + 1 / one, 0) - 1 / all) / (3 * (k - 1))
  return chiSquareTail(unlike / correction, k - 1)
}
