import type { Measured } from './measured.ts'
import type { Measurement } from './model.ts'

/** A burn with what it counts for in a sum: 1/n in a mean, −1/n in what is taken off. */
export interface Weighed {
  readonly measured: Measured
  readonly weight: number
}

/**
 * Uncertainty of measurement of a weighted sum of burns: readings add up as squares; what burns share moves all of them
 * together, and so falls out of a difference as far as it moves both alike (GUM 5.2.2) [bib:gum2008].
 */
const measurementOf = (burns: readonly Weighed[]): Measurement => {
  const shared = new Map<string, number>()
  let readings = 0
  for (const { measured, weight } of burns) {
    for (const change of measured.own) readings += (weight * change) ** 2
    for (const [key, change] of measured.shared) shared.set(key, (shared.get(key) ?? 0) + weight * change)
  }
  return {
    readings: Math.sqrt(readings),
    shared: Math.sqrt([...shared.values()].reduce((sum, change) => sum + change ** 2, 0)),
  }
}

const averaged = (burns: readonly Measured[], sign: 1 | -1): readonly Weighed[] =>
  burns.map((measured) => ({ measured, weight: sign / burns.length }))

/** Of the mean of some burns. */
export const measurementOfMean = (burns: readonly Measured[]): Measurement =>
  measurementOf(averaged(burns, 1))

/** Of the difference of two means. */
export const measurementOfDifference = (
  burns: readonly Measured[],
  against: readonly Measured[],
): Measurement => measurementOf([...averaged(burns, 1), ...averaged(against, -1)])
