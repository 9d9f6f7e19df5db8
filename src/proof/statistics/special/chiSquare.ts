import { logGamma } from './gamma.ts'

const MOST_TERMS = 10_000
const LAST_BIT = 1e-17
const TINY = 1e-300

/** Lower regularised incomplete gamma function by its power series [bib:dlmf, 8.11.4]. */
const series = (a: number, x: number, front: number): number => {
  let term = 1 / a
  let sum = term
  for (let n = 1; n < MOST_TERMS && term > LAST_BIT * sum; n++) {
    term *= x / (a + n)
    sum += term
  }
  return front * sum
}

/** Upper one by its continued fraction, Lentz's method [bib:dlmf, 8.9.2]. */
const fraction = (a: number, x: number, front: number): number => {
  let b = x + 1 - a
  let c = 1 / TINY
  let d = 1 / b
  let h = d
  for (let n = 1; n < MOST_TERMS; n++) {
    const step = n * (a - n)
    b += 2
    d = 1 / (step * d + b)
    c = b + step / c
    h *= d * c
    if (Math.abs(d * c - 1) < 1e-16) break
  }
  return front * h
}

/** Chance of a sum of `df` squared standard normal numbers beyond `square`: upper tail of χ² [1]. */
export const chiSquareTail = (square: number, df: number): number => {
  if (square <= 0) return 1
  if (square === Number.POSITIVE_INFINITY) return 0
  const [a, x] = [df / 2, square / 2]
  const front = Math.exp(a * Math.log(x) - x - logGamma(a))
  return x < a + 1 ? 1 - series(a, x, front) : fraction(a, x, front)
}
