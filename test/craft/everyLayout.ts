import { randomStream } from '#basis/random.ts'
import type { Stove } from '#stove/model.ts'
import { randomCase } from '../science/randomStove.ts'

/** Whole stoves of every layout, dampers, risers, grates and lid rings among them; the same ones every time. */
export const everyLayout = (count: number, seed = 20310517): readonly Stove[] => {
  const stream = randomStream(seed)
  return Array.from({ length: count }, () => randomCase(stream).stove)
}
