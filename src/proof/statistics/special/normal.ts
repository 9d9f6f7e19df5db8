const ROOT_TWO_PI = Math.sqrt(2 * Math.PI)
/** Where the series begins to lose digits against the fraction. */
const SERIES_TO = 2.6

/** Density of the standard normal distribution [1]. */
export const normalDensity = (x: number): number => Math.exp((-x * x) / 2) / ROOT_TWO_PI

/** Φ(x) − 1/2 by its series, all terms of one sign [bib:dlmf, 7.6.2]. */
const centralArea = (x: number): number => {
  let term = x
  let sum = x
  for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n++) {
    term *= (x * x) / (2 * n + 1)
    sum += term
  }
  return sum * normalDensity(x)
}

/** 1 − Φ(x) for large x: Mills' ratio by its continued fraction, from the far end [bib:dlmf, 7.9.1]. */
const upperTail = (x: number): number => {
  let fraction = x
  for (let n = Math.ceil(16 + 300 / (x * x)); n >= 1; n--) fraction = x + n / fraction
  return normalDensity(x) / fraction
}

/** Φ(x), the standard normal distribution; both tails to full relative precision [1]. */
export const normalCdf = (x: number): number => {
  if (x > SERIES_TO) return 1 - upperTail(x)
  if (x < -SERIES_TO) return upperTail(-x)
  return 0.5 + centralArea(x)
}
