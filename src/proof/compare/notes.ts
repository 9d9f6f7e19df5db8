import { differenceText } from './amount.ts'
import type { ComparedMetric, Contrast, VariantFigures } from './model.ts'

/** A coefficient of variation above this calls for another look before another burn; from memory of the protocol [1]. */
const WILD = 0.25
/** Of the mean: what is worth saying of instruments that are off for all burns alike; a judgement [1]. */
const WORTH_SAYING = 0.02

const named = (figures: readonly VariantFigures[]): string =>
  figures.map(({ variant }) => `“${variant}”`).join(', ')

/** What a reader of one metric should know; sentences. */
export const metricNotes = (
  metric: ComparedMetric,
  figures: readonly VariantFigures[],
  contrasts: readonly Contrast[],
): readonly string[] => {
  const notes: string[] = []
  const several = figures.filter(({ count }) => count > 1)
  const closer = several.filter(
    ({ sd, count, measurement }) => (sd as number) < 0.5 * measurement.readings * Math.sqrt(count),
  )
  if (several.length > 0 && closer.length === several.length)
    notes.push(
      'Burns differ by less than the readings of one can tell: finer instruments would show more, more burns would not.',
    )
  const singles = figures.filter(({ count }) => count === 1)
  if (singles.length > 0) notes.push(`Burnt once only, and so beside the comparison: ${named(singles)}.`)
  const wild = figures.filter(({ variation }) => variation !== null && variation > WILD)
  if (wild.length > 0)
    notes.push(
      `Spread by more than a quarter of the mean: ${named(wild)}. Look for what differed from burn to burn before burning more.`,
    )
  const shared = Math.max(...figures.map(({ measurement }) => measurement.shared))
  const mean = Math.max(...figures.map((one) => Math.abs(one.mean)))
  if (mean > 0 && shared > WORTH_SAYING * mean) {
    const left = Math.max(...contrasts.map(({ measurement }) => measurement.shared))
    notes.push(
      `Scale, thermometer and heating values may put every mean off by about ${differenceText(metric, shared, shared)}, all alike; of a difference between variants by ${left < 0.01 * shared ? 'next to nothing' : `up to ${differenceText(metric, left, left)}`}.`,
    )
  }
  return notes
}
