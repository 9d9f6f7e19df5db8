import { logGamma } from './gamma.ts'

const TINY = 1e-300
const MOST_TERMS = 20_000

/** Continued fraction of the incomplete beta function by Lentz's method [bib:dlmf, 8.17.22]. */
const fractionOf = (a: number, b: number, x: number): number => {
  const away = (value: number): number => (Math.abs(value) < TINY ? TINY : value)
  let c = 1
  let d = 1 / away(1 - ((a + b) * x) / (a + 1))
  let h = d
  for (let m = 1; m <= MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / away(1 + even * d)
    c = away(1 + even / c)
    h *= d * c
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / away(1 + odd * d)
    c = away(1 + odd / c)
    const step = d * c
    h *= step
    if (Math.abs(step - 1) < 1e-16) return h
  }
  return h
}

/** Regularised incomplete beta function I_x(a, b), 0 ≤ x ≤ 1, a and b > 0 [1]. `y` is 1 − x where that is known better. */
export const incompleteBeta = (x: number, a: number, b: number, y = 1 - x): number => {
  if (x <= 0) return 0
  if (y <= 0) return 1
  const front = Math.exp(
    logGamma(a + b) -
      logGamma(a) -
      logGamma(b) +
      a * Math.log(x) +
      b * (y < 0.5 ? Math.log(y) : Math.log1p(-x)),
  )
  // The fraction converges fast below the mean of the distribution, its mirror image above.
  return x < (a + 1) / (a + b + 2) ? (front * fractionOf(a, b, x)) / a : 1 - (front * fractionOf(b, a, y)) / b
}
