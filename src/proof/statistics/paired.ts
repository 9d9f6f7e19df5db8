import { type Difference, differenceOf } from './difference.ts'
import { sampleOf } from './sample.ts'

/**
 * a − b of burns that belong together two by two: one day, one batch of fuel. Null for fewer than two pairs.
 * @throws RangeError where the two lists are not of one length.
 */
export const paired = (a: readonly number[], b: readonly number[], confidence = 0.95): Difference | null => {
  if (a.length !== b.length) throw new RangeError(`${a.length} values cannot be paired with ${b.length}`)
  if (a.length < 2) return null
  const { mean, variance, count } = sampleOf(a.map((value, i) => value - (b[i] as number)))
  return differenceOf(mean, Math.sqrt(variance / count), count - 1, confidence)
}
