import { randomStream } from '#basis/random.ts'

/**
 * Points that fill the unit cube evenly: Latin hypercube, one point in each of `count` slices of every axis, shuffled and
 * jittered by a seeded stream (McKay, Beckman & Conover, Technometrics 21 (1979) 239) [bib:mckay1979]. With some thirty
 * coefficients and a hundred points it keeps every margin even, which additive sequences do not at that dimension.
 */
export const evenPoints = (
  count: number,
  dimensions: number,
  seed: number,
): readonly (readonly number[])[] => {
  const stream = randomStream(seed)
  const axes = Array.from({ length: dimensions }, (_, d) => {
    const axis = stream.fork(d)
    const slices = Array.from({ length: count }, (_, i) => (i + axis.uniform()) / count)
    for (let i = count - 1; i > 0; i--) {
      const j = axis.integer(i + 1)
      const swap = slices[i] as number
      slices[i] = slices[j] as number
      slices[j] = swap
    }
    return slices
  })
  return Array.from({ length: count }, (_, i) => axes.map((axis) => axis[i] as number))
}
