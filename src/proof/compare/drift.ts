import { driftAlong } from '#proof/statistics/layout.ts'
import { differenceText, spanText } from './amount.ts'
import { metricWords } from './metricWords.ts'
import type { ComparedMetric, Drift, Method, Point } from './model.ts'

/** With fewer burns a day there is no course of the day to speak of; a judgement. */
const BURNS_A_DAY = 3
/** A drift less likely than this to be luck is told. */
const TOLD = 0.05

const towards = (metric: ComparedMetric, slope: number): string =>
  metric.wanted === 'neither'
    ? 'does not stand for its stove alone'
    : (metric.wanted === 'less') === slope < 0
      ? 'looks better than it is'
      : 'looks worse than it is'

const sentenceOf = (metric: ComparedMetric, over: Drift['over'], drift: Drift['slope']): string => {
  const { value, low, high } = drift
  const doubt = (high - low) / 2
  const [least, most] = value < 0 ? [-high, -low] : [low, high]
  const noun = metricWords(metric.key).noun
  return `With every burn of the ${over}, ${noun} ${value < 0 ? 'falls' : 'rises'} by ${differenceText(metric, Math.abs(value), doubt)} (between ${spanText(metric, least, most, ' and ', doubt)}), whatever the variant: what is burnt late ${towards(metric, value)}.`
}

/** Does the metric run with the order of burns, once variants and what was taken out are? Null where that cannot be told. */
export const driftOf = (
  metric: ComparedMetric,
  points: readonly Point[],
  inSeries: readonly (number | null)[],
  { blockedBy }: Method,
  confidence: number,
): Drift | null => {
  const days = new Set(points.map(({ day }) => day)).size
  const over = points.length / days >= BURNS_A_DAY ? 'day' : 'series'
  const along = over === 'day' ? points.map(({ placeInDay }) => placeInDay) : inSeries
  if (along.some((one) => one === null)) return null
  const layout = {
    values: points.map(({ value }) => value),
    groups: points.map(({ variant }) => variant),
    factors: (over === 'day' ? blockedBy : []).map((by) =>
      points.map(({ block, batch }) => (by === 'block' ? block : (batch as string))),
    ),
    along: along as readonly number[],
  }
  const slope = driftAlong(layout, confidence)
  if (slope === null) return null
  const found = slope.p < TOLD && slope.standardError > 0
  return { over, slope, found, sentence: found ? sentenceOf(metric, over, slope) : null }
}
