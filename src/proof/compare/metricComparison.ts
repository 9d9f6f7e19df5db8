import { differenceOf } from '#proof/statistics/difference.ts'
import { sampleOf, standardDeviation, variation } from '#proof/statistics/sample.ts'
import type { Trial } from '#proof/trial/model.ts'
import { contrastOf } from './contrast.ts'
import { driftOf } from './drift.ts'
import type { Measured, MeasuredTrial } from './measured.ts'
import { measurementOfMean } from './measurement.ts'
import { comparePoints } from './method.ts'
import type {
  ComparedMetric,
  CompareOptions,
  Contrast,
  MetricComparison,
  Point,
  VariantFigures,
} from './model.ts'
import { metricNotes } from './notes.ts'
import type { BurnPlace } from './place.ts'

/** One burn, measured and placed. */
export interface Burn {
  readonly index: number
  readonly trial: Trial
  readonly variant: string
  readonly place: BurnPlace
  readonly measured: MeasuredTrial
}

/** What a comparison was asked. */
export interface Asked {
  readonly reference: string
  readonly variants: readonly string[]
  readonly confidence: number
  readonly marginShare: number
  readonly method: CompareOptions['method']
  readonly water: string
}

const pointOf = ({ index, trial, variant, place, measured }: Burn, id: string): Point | null => {
  const found = measured.metrics.get(id)
  return found === undefined
    ? null
    : {
        index,
        trial: trial.name,
        variant,
        day: trial.day,
        block: trial.block,
        batch: trial.fuel.batch ?? null,
        placeInDay: place.inDay,
        value: found.value,
        u: found.u,
        mishap: (trial.wentWrong ?? []).length > 0,
      }
}

const figuresOf = (
  variant: string,
  points: readonly Point[],
  burns: readonly Burn[],
  id: string,
  confidence: number,
): VariantFigures => {
  const sample = sampleOf(points.map(({ value }) => value))
  const { count, mean } = sample
  const several = count > 1
  const sd = standardDeviation(sample)
  const about = several ? differenceOf(mean, sd / Math.sqrt(count), count - 1, confidence) : null
  return {
    variant,
    points,
    count,
    mean,
    sd: several ? sd : null,
    variation: several ? variation(sample) : null,
    interval: about === null ? null : { low: about.low, high: about.high },
    measurement: measurementOfMean(burns.flatMap(({ measured }) => measured.metrics.get(id) ?? [])),
  }
}

/** One metric over all burns; null where fewer than two variants have it. */
export const metricComparison = (
  metric: ComparedMetric,
  burns: readonly Burn[],
  asked: Asked,
): MetricComparison | null => {
  const { variants, confidence, marginShare, method: wanted, water } = asked
  const { id } = metric
  const points = burns.flatMap((burn) => pointOf(burn, id) ?? [])
  const having = variants.filter((variant) => points.some((point) => point.variant === variant))
  if (having.length < 2) return null
  const ofVariant = (variant: string): readonly Burn[] =>
    burns.filter((burn) => burn.variant === variant && burn.measured.metrics.has(id))
  const figures = having.map((variant) =>
    figuresOf(
      variant,
      points.filter((point) => point.variant === variant),
      ofVariant(variant),
      id,
      confidence,
    ),
  )
  const { method, pairs, residualSd, degrees } = comparePoints(points, confidence, wanted)
  const margin = marginShare * Math.abs((figures[0] as VariantFigures).mean)
  const family = figures.filter(({ count }) => count > 1).length
  const measured = (variant: string): readonly Measured[] =>
    ofVariant(variant).flatMap((burn) => burn.measured.metrics.get(id) ?? [])
  const contrasts: Contrast[] = figures.flatMap((against, i) =>
    figures.slice(i + 1).map((variant) =>
      contrastOf({
        metric,
        variant,
        against,
        method,
        water,
        margin,
        marginShare,
        difference: pairs(variant.variant, against.variant),
        residualSd,
        degrees,
        family: Math.max(family, 2),
        confidence,
        burns: { variant: measured(variant.variant), against: measured(against.variant) },
      }),
    ),
  )
  const inSeries = points.map(
    ({ index }) => burns.find((burn) => burn.index === index)?.place.inSeries ?? null,
  )
  return {
    metric,
    variants: figures,
    method,
    margin,
    contrasts,
    drift: driftOf(metric, points, inSeries, method, confidence),
    missing: burns.flatMap(({ index, trial, measured: { metrics, missing } }) =>
      metrics.has(id)
        ? []
        : [{ index, trial: trial.name, reason: missing.get(id) ?? 'the burn has no such phase' }],
    ),
    notes: metricNotes(metric, figures, contrasts),
  }
}
