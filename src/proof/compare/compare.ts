import { BadInput } from '#basis/problem.ts'
import { PROVENANCE } from '#proof/metrics/worked.ts'
import { type Trial, variantOf } from '#proof/trial/model.ts'
import { COMPARED_METRICS, QUESTIONS } from './comparedMetrics.ts'
import { conditionWarnings, waterOf } from './conditions.ts'
import { driftWarnings } from './driftWarning.ts'
import { measuredTrial } from './measured.ts'
import { type Asked, type Burn, metricComparison } from './metricComparison.ts'
import type { CompareOptions, Comparison, MetricComparison, Warning } from './model.ts'
import { inOrder } from './naturalOrder.ts'
import { orderWarnings } from './order.ts'
import { type BurnPlace, placesOf } from './place.ts'
import { verdictsOf } from './verdicts.ts'
import { volumeText } from './water.ts'

/**
 * By variant, day and place, whatever the order of the files: sums then come out alike to the last bit, and a figure that
 * lies between two roundings is not written one way today and the other way tomorrow.
 */
const inTheirOrder = (a: Burn, b: Burn): number =>
  inOrder(a.variant, b.variant) ||
  inOrder(a.trial.day, b.trial.day) ||
  (a.place.inDay ?? 0) - (b.place.inDay ?? 0) ||
  inOrder(a.trial.name, b.trial.name)

export const USUAL_CONFIDENCE = 0.95
/** Smallest difference that matters to someone who boils water: a twentieth; a judgement. */
export const USUAL_MARGIN = 0.05
/** Water of all burns within this share is one amount [1]. */
const ONE_AMOUNT = 0.05

const waterText = (burns: readonly Burn[]): string => {
  const all = burns.map(({ trial }) => waterOf(trial))
  const mean = all.reduce((sum, one) => sum + one, 0) / all.length
  return all.every((one) => Math.abs(one - mean) <= ONE_AMOUNT * mean) ? volumeText(mean) : 'the water'
}

const refuse = (code: string, field: string, value: string, allowed: string, fix: string): never => {
  throw new BadInput([{ code, field, value, allowed, fix }])
}

const questionOf = (metrics: readonly MetricComparison[], wanted: string | undefined): string | null => {
  const ids = metrics.map(({ metric }) => metric.id)
  if (wanted !== undefined)
    return (
      metrics.find(({ metric }) => metric.id === wanted || metric.key === wanted)?.metric.id ??
      refuse(
        'compare.question',
        'question',
        wanted,
        metrics.map(({ metric }) => metric.key).join(', '),
        'Ask for a metric that at least two variants have.',
      )
    )
  return QUESTIONS.find((id) => ids.includes(id)) ?? ids[0] ?? null
}

const provenanceOf = (confidence: number, metrics: readonly MetricComparison[]): readonly string[] => [
  `“Most likely” means: in ${Math.round(100 * confidence)} of 100 such series an interval made so holds the truth.`,
  ...(metrics.length > 1
    ? [
        `${metrics.length} metrics were looked at. About one in ${Math.round(1 / (1 - confidence))} shows a difference by luck alone: judge by the one you asked about, and take the others as hints.`,
      ]
    : []),
  'Burns that are compared must have been burnt alike but for the one change: statistics cannot see what nobody noted.',
  PROVENANCE,
]

/**
 * Compares variants by their burns, metric by metric: every point, means and spreads, differences with intervals, and what
 * a maker should take from it. Pure: the same trials give the same answer.
 * @throws BadInput for fewer than two variants, or a reference or question that is none.
 */
export const compare = (trials: readonly Trial[], options: CompareOptions = {}): Comparison => {
  const { confidence = USUAL_CONFIDENCE, margin: marginShare = USUAL_MARGIN, mishaps = 'keep' } = options
  const places = placesOf(trials)
  const all = trials.map((trial, index) => ({ trial, index, variant: variantOf(trial) }))
  const left = all.filter(({ trial }) => mishaps === 'leave out' && (trial.wentWrong ?? []).length > 0)
  const burns = all
    .filter((one) => !left.includes(one))
    .map(
      (one): Burn => ({
        ...one,
        place: places[one.index] as BurnPlace,
        measured: measuredTrial(one.trial),
      }),
    )
    .sort(inTheirOrder)
  const names = [...new Set(burns.map(({ variant }) => variant))].sort(inOrder)
  if (names.length < 2)
    refuse(
      'compare.variants',
      'trials',
      names.length === 0 ? 'no burns' : `burns of “${names[0]}” alone`,
      'burns of at least two variants',
      'Say in each trial what tells its stove from its sisters: "stove": { "variant": … }.',
    )
  const reference = options.reference ?? (names[0] as string)
  if (!names.includes(reference))
    refuse(
      'compare.reference',
      'reference',
      reference,
      names.map((name) => `“${name}”`).join(', '),
      'Name one of the variants.',
    )
  const variants = [reference, ...names.filter((name) => name !== reference)]
  const asked: Asked = {
    reference,
    variants,
    confidence,
    marginShare,
    method: options.method,
    water: waterText(burns),
  }
  const metrics = COMPARED_METRICS.flatMap((metric) => metricComparison(metric, burns, asked) ?? [])
  const question = questionOf(metrics, options.question)
  const main = metrics.find(({ metric }) => metric.id === question)
  const placed = burns.map(({ variant, trial, place }) => ({ variant, block: trial.block, place }))
  const mishapWarnings = burns
    .filter(({ trial }) => (trial.wentWrong ?? []).length > 0)
    .map(
      ({ trial, variant }): Warning => ({
        code: 'mishap',
        sentence: `In “${trial.name}” (“${variant}”) something went wrong: ${(trial.wentWrong ?? []).join('; ')}.`,
        fix: 'Look at the comparison with burns like it left out as well.',
      }),
    )
  return {
    reference,
    variants: variants.map((variant) => ({
      variant,
      burns: burns.filter((burn) => burn.variant === variant).length,
    })),
    question,
    confidence,
    metrics,
    verdicts: verdictsOf(metrics, question, variants, burns),
    warnings: [
      ...conditionWarnings(burns, reference, variants),
      ...orderWarnings(placed, reference, variants),
      ...driftWarnings(main),
      ...mishapWarnings,
    ],
    leftOut: left.map(({ index, trial }) => ({
      index,
      trial: trial.name,
      reason: `something went wrong: ${(trial.wentWrong ?? []).join('; ')}`,
    })),
    provenance: provenanceOf(confidence, metrics),
  }
}
