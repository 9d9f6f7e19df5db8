/** Coefficients of Lanczos's series with g = 607/128, n = 15, as P. Godfrey gives them (2001): about 1e-15; from memory. */
const G = 607 / 128
const LANCZOS = [
  0.9999999999999971, 57.15623566586292, -59.59796035547549, 14.136097974741746, -0.4919138160976202,
  3.399464998481189e-5, 4.652362892704858e-5, -9.837447530487956e-5, 0.0001580887032249125,
  -0.00021026444172410488, 0.00021743961811521265, -0.0001643181065367639, 8.441822398385275e-5,
  -2.6190838401581408e-5, 3.6899182659531625e-6,
] as const

/**
 * Logarithm of the gamma function, x > 0; held against SciPy [1].
 * @throws RangeError for x ≤ 0.
 */
export const logGamma = (x: number): number => {
  if (!(x > 0)) throw new RangeError(`The gamma function is wanted above 0, not at ${x}`)
  const z = x - 1
  let sum: number = LANCZOS[0]
  for (let i = 1; i < LANCZOS.length; i++) sum += (LANCZOS[i] as number) / (z + i)
  const t = z + G + 0.5
  return (z + 0.5) * Math.log(t) - t + Math.log(Math.sqrt(2 * Math.PI) * sum)
}
