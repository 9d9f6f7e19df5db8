import type { Difference } from '#proof/statistics/difference.ts'
import { burnsForDifference, burnsToSettle, type Degrees } from '#proof/statistics/moreBurns.ts'
import { contrastSentence, exactSentence, moreSentence, type Told } from './contrastSentence.ts'
import type { Measured } from './measured.ts'
import { measurementOfDifference } from './measurement.ts'
import type { Contrast, MoreBurns, VariantFigures, Verdict, Wanted } from './model.ts'

/** What the two of a contrast are judged with. */
export interface Judged extends Told {
  readonly difference: Difference | null
  /** Spread that the method takes for all; null: each variant has its own. */
  readonly residualSd: number | null
  /** Degrees of freedom of that spread with so many burns of each; null likewise. */
  readonly degrees: Degrees | null
  /** Variants whose pairs share the confidence. */
  readonly family: number
  readonly confidence: number
  readonly burns: { readonly variant: readonly Measured[]; readonly against: readonly Measured[] }
}

/** A spread below this share of the mean is rounding, not burning [1]. */
const ROUNDING = 1e-9
/** Standard uncertainties that readings may be off together. */
const READINGS_REACH = 2

/** Burns that agree to the last digit leave no spread to judge by: then the readings' own uncertainty has to do. */
const isExact = ({ standardError }: Difference, against: VariantFigures): boolean =>
  standardError <= ROUNDING * Math.abs(against.mean)

const verdictOf = (
  { value, low, high }: Pick<Difference, 'value' | 'low' | 'high'>,
  wanted: Wanted,
  margin: number,
): Verdict => {
  if (low > -margin && high < margin) return 'alike'
  if (low <= 0 && high >= 0) return 'open'
  if (wanted === 'neither') return 'differs'
  return (wanted === 'less') === value < 0 ? 'better' : 'worse'
}

const moreOf = (judged: Judged, difference: Difference): MoreBurns => {
  const { variant, against, residualSd, family, confidence, margin } = judged
  const degrees = judged.degrees ?? undefined
  const sd = [residualSd ?? variant.sd ?? 0, residualSd ?? against.sd ?? 0] as const
  // The intervals of a family hold for all its pairs together: Bonferroni's share for each is near enough for a plan.
  const each = 1 - (1 - confidence) / ((family * (family - 1)) / 2)
  return {
    forThisDifference: burnsToSettle(difference.value, sd, undefined, each, degrees),
    forMargin: margin > 0 ? burnsForDifference(sd, margin, each, degrees) : null,
    now: Math.min(variant.count, against.count),
  }
}

/** One variant against another, judged and said. */
export const contrastOf = (judged: Judged): Contrast => {
  const { metric, variant, against, difference, margin, burns } = judged
  const measurement = measurementOfDifference(burns.variant, burns.against)
  const exact = difference !== null && isExact(difference, against)
  const reach = READINGS_REACH * measurement.readings
  const judgedBy = exact
    ? { value: difference.value, low: difference.value - reach, high: difference.value + reach }
    : difference
  const verdict = judgedBy === null ? 'unknown' : verdictOf(judgedBy, metric.wanted, margin)
  const more = difference === null || exact ? null : moreOf(judged, difference)
  return {
    variant: variant.variant,
    against: against.variant,
    difference,
    relative: difference === null || against.mean === 0 ? null : difference.value / Math.abs(against.mean),
    verdict,
    sentence:
      exact && judgedBy !== null
        ? exactSentence(judged, judgedBy.value, reach, verdict)
        : contrastSentence(judged, difference, verdict),
    moreSentence: moreSentence(judged, difference, verdict, more),
    more,
    measurement,
  }
}
