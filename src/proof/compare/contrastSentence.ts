import type { Difference } from '#proof/statistics/difference.ts'
import { differenceText, endTexts, roundsToNothing, spanText } from './amount.ts'
import { blockWords } from './method.ts'
import { metricWords } from './metricWords.ts'
import type { ComparedMetric, Method, MoreBurns, VariantFigures, Verdict } from './model.ts'

/** What a sentence about two variants is made of. */
export interface Told {
  readonly metric: ComparedMetric
  readonly variant: VariantFigures
  readonly against: VariantFigures
  readonly method: Method
  /** What was boiled: `1 L (1.06 US qt)`; `the water` where burns differ in it. */
  readonly water: string
  readonly margin: number
  readonly marginShare: number
}

const quoted = (name: string): string => `“${name}”`

const burnsOf = (count: number, of = ''): string => `${count} ${count === 1 ? 'burn' : 'burns'}${of}`

const withBurns = ({ variant, against, method }: Told): string => {
  const burns =
    variant.count === against.count
      ? `${burnsOf(variant.count)} each`
      : `${burnsOf(variant.count)} of ${quoted(variant.variant)} and ${against.count} of ${quoted(against.variant)}`
  return method.blockedBy.length === 0
    ? burns
    : `${burns}, and what each ${blockWords(method.blockedBy)} gave to all of them taken out`
}

/** While it simmers, where that is what was measured. */
const stage = ({ metric }: Told): string => (metric.phase === 'simmer' ? ', simmering,' : '')

const clause = (told: Told, value: number, doubt: number): string => {
  const { metric, variant, against, water } = told
  const words = metricWords(metric.key)
  const amount = differenceText(metric, Math.abs(value), doubt)
  const said = value < 0 ? words.less(amount, water) : words.more(amount, water)
  return `${quoted(variant.variant)}${stage(told)} ${said} than ${quoted(against.variant)}`
}

const GAIN: Readonly<Partial<Record<Verdict, string>>> = {
  better: 'gain',
  worse: 'loss',
  differs: 'difference',
}

const ends = ({ low, high }: Difference): readonly [number, number] =>
  high <= 0 ? [-high, -low] : [low, high]

/** What a maker should take from it. */
export const contrastSentence = (told: Told, difference: Difference | null, verdict: Verdict): string => {
  const { metric, variant, against, marginShare } = told
  const words = metricWords(metric.key)
  if (difference === null) {
    const once = [variant, against].filter(({ count }) => count < 2)
    return once.length > 0
      ? `Nothing can be said of ${once.map((one) => quoted(one.variant)).join(' and ')}: one burn does not tell how far burns of one stove differ.`
      : `${quoted(variant.variant)} and ${quoted(against.variant)} cannot be told apart with these burns.`
  }
  const { value, low, high } = difference
  const doubt = (high - low) / 2
  if (verdict === 'alike')
    return `${quoted(variant.variant)} and ${quoted(against.variant)} are as good as alike in ${words.noun}: with ${withBurns(told)}, the true difference is most likely less than ${differenceText(metric, Math.max(Math.abs(low), Math.abs(high)), doubt)}, within the ${Math.round(100 * marginShare)} % that matter.`
  if (verdict === 'open') {
    const [least, most] = endTexts(metric, low, high, doubt)
    const anywhere = `from ${least} ${words.lessWord} to ${most} ${words.moreWord}`
    return roundsToNothing(metric, value, doubt)
      ? `On average ${quoted(variant.variant)} and ${quoted(against.variant)} come out the same in ${words.noun}; with ${withBurns(told)}, the truth may be anything ${anywhere}.`
      : `It looks as if ${clause(told, value, doubt)}, but that may be luck: with ${withBurns(told)}, the truth may be anything ${anywhere}.`
  }
  const [least, most] = ends(difference)
  return `${clause(told, value, doubt)}. With ${withBurns(told)}, the true ${GAIN[verdict] ?? 'difference'} most likely lies between ${spanText(metric, least, most, ' and ', doubt)}.`
}

/** Of burns that agree to the last digit, so that only the readings may be off, by `reach` either way. */
export const exactSentence = (told: Told, value: number, reach: number, verdict: Verdict): string => {
  const { metric, variant, against } = told
  const { noun } = metricWords(metric.key)
  const off = differenceText(metric, reach, reach)
  return verdict === 'alike' || verdict === 'open'
    ? `All burns of ${quoted(variant.variant)} and ${quoted(against.variant)} read alike in ${noun}; what the readings may be off is all there is to know, ${off} either way.`
    : `${clause(told, value, reach)}. Burns of each read alike to the last digit, so only the readings may be off, by ${off} either way.`
}

/** How many more burns would settle it; null where it is settled. */
export const moreSentence = (
  { metric, margin, marginShare, against }: Told,
  difference: Difference | null,
  verdict: Verdict,
  more: MoreBurns | null,
): string | null => {
  if (verdict === 'unknown') return 'Burn every variant three times at the least, better five times.'
  if (verdict !== 'open' || difference === null || more === null) return null
  const { forThisDifference, forMargin, now } = more
  const shown = Math.abs(difference.value) >= margin
  if (shown && forThisDifference !== null) {
    const all = Math.max(forThisDifference, now + 1)
    return `If the difference is as large as it looks, ${all} burns of each, ${all - now} more, would show it four times out of five.`
  }
  const wanted = `To know it to within ${differenceText(metric, margin, margin)} either way (${Math.round(100 * marginShare)} % of ${quoted(against.variant)})`
  if (forMargin === null) return `${wanted} would take more than 200 burns of each.`
  const all = Math.max(forMargin, now + 1)
  return `${wanted} takes about ${all} burns of each, ${all - now} more.`
}
