import { decimalSums, quotient } from './decimalSums.ts'

/** What is known of a sample: all that the comparisons need. */
export interface Sample {
  readonly count: number
  readonly mean: number
  /** Sample variance, over n − 1; 0 for a single value, which says nothing of spread. */
  readonly variance: number
}

/**
 * Mean and variance, exact to the last bit for decimals as written; of at least one value.
 * @throws RangeError for none, or for a value that is not finite.
 */
export const sampleOf = (values: readonly number[]): Sample => {
  if (values.length === 0) throw new RangeError('A sample holds at least one value')
  const { count, exponent, sum, squares } = decimalSums(values)
  const n = BigInt(count)
  const spread = n * squares - sum * sum
  return {
    count,
    mean: quotient(sum, n, exponent),
    variance: count < 2 ? 0 : quotient(spread, n * (n - 1n), 2 * exponent),
  }
}

/** In the unit of the values. */
export const standardDeviation = ({ variance }: Sample): number => Math.sqrt(variance)

/** Coefficient of variation, standard deviation over mean [1]; null where the mean is nothing. */
export const variation = (sample: Sample): number | null =>
  sample.mean === 0 ? null : standardDeviation(sample) / Math.abs(sample.mean)
