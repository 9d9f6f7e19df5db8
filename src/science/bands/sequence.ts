import { type RandomStream, randomStream } from '#basis/random.ts'

/**
 * Points that fill the unit cube evenly: Latin hypercube, one point in each of `count` slices of every axis, shuffled and
 * jittered by a seeded stream (McKay, Beckman & Conover, Technometrics 21 (1979) 239) [bib:mckay1979]. With some forty
 * coefficients and fifty points it keeps every margin even, which additive sequences do not at that dimension. Shuffles that
 * run alongside each other by accident are combed out.
 */
export const evenPoints = (
  count: number,
  dimensions: number,
  seed: number,
): readonly (readonly number[])[] => {
  const stream = randomStream(seed)
  const streams = Array.from({ length: dimensions }, (_, d) => stream.fork(d))
  const orders = combed(streams.map((axis) => shuffled(count, axis)))
  const axes = orders.map((order, d) => order.map((slice) => (slice + streams[d]!.uniform()) / count))
  return Array.from({ length: count }, (_, i) => axes.map((axis) => axis[i] as number))
}

const shuffled = (count: number, axis: RandomStream): readonly number[] => {
  const order = Array.from({ length: count }, (_, i) => i)
  for (let i = count - 1; i > 0; i--) {
    const j = axis.integer(i + 1)
    const swap = order[i] as number
    order[i] = order[j] as number
    order[j] = swap
  }
  return order
}

const PASSES = 3

/**
 * The same axes with less correlation between them: of each axis what the others before it share is taken out, and what is
 * left is ranked anew; forwards, then backwards (Owen, J. Am. Stat. Assoc. 89 (1994) 1517) [bib:owen1994]. With more points
 * than axes a hundredth is left; with fewer it is no worse than chance.
 */
const combed = (orders: readonly (readonly number[])[]): readonly (readonly number[])[] => {
  const middle = ((orders[0]?.length ?? 1) - 1) / 2
  const axes = orders.map((order) => order.map((slice) => slice - middle))
  for (let pass = 0; pass < PASSES; pass++) {
    for (let a = 1; a < axes.length; a++) {
      const axis = axes[a] as number[]
      const left = [...axis]
      for (let b = 0; b < a; b++) takeOut(left, axes[b] as number[])
      axes[a] = ranked(left, middle)
    }
    axes.reverse()
  }
  if (PASSES % 2 === 1) axes.reverse()
  return axes.map((axis) => axis.map((rank) => rank + middle))
}

const takeOut = (values: number[], axis: readonly number[]): void => {
  let shared = 0
  let own = 0
  for (let i = 0; i < values.length; i++) {
    shared += (values[i] as number) * (axis[i] as number)
    own += (axis[i] as number) ** 2
  }
  if (!(own > 0)) return
  for (let i = 0; i < values.length; i++)
    values[i] = (values[i] as number) - (shared / own) * (axis[i] as number)
}

const ranked = (values: readonly number[], middle: number): number[] => {
  const order = values.map((value, i) => ({ value, i })).sort((a, b) => a.value - b.value || a.i - b.i)
  const ranks = new Array<number>(values.length)
  for (const [rank, { i }] of order.entries()) ranks[i] = rank - middle
  return ranks
}
