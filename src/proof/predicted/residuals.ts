import { PROVENANCE } from '#proof/metrics/worked.ts'
import { type Difference, differenceOf } from '#proof/statistics/difference.ts'
import { sampleOf, standardDeviation } from '#proof/statistics/sample.ts'
import { CLAIMS } from './claims.ts'
import type { Claim, ClaimResiduals, ClaimVerdict, PredictedTrial, Residual } from './model.ts'
import { bandEdges } from './side.ts'

/** Outside a band of the middle nine tenths by chance [1]. */
const OUTSIDE = 0.1
/** Rarer than this is more than chance [1]. */
const RARE = 0.05
const LEAST_BURNS = 3
/** With so many stoves, each counts once: burns of one stove share what the model has wrong of it. */
const ENOUGH_STOVES = 4

/** Chance of `least` or more of `all`, each with chance `p`: upper tail of the binomial distribution [1]. */
export const binomialTail = (least: number, all: number, p: number): number => {
  if (least <= 0) return 1
  let term = p ** all
  let sum = 0
  // From the far end, where terms are small.
  for (let k = all; k >= least; k--) {
    sum += term
    term *= (k / (all - k + 1)) * ((1 - p) / p)
  }
  return Math.min(1, sum)
}

const residualsOf = (claim: Claim, trials: readonly PredictedTrial[]): readonly Residual[] =>
  trials.flatMap(({ trial, variant, figures }, index): readonly Residual[] => {
    const figure = figures.find((one) => one.claim.key === claim.key)
    if (figure === undefined) return []
    const { measured, predicted, residual, side } = figure
    return measured === null || predicted === null || residual === null || !(measured > 0) || !(predicted > 0)
      ? []
      : [{ index, trial, variant, measured, predicted, residual, ratio: measured / predicted, side }]
  })

/** One figure a stove where there are enough of them, else one a burn. */
const counting = (
  residuals: readonly Residual[],
  of: (residual: Residual) => number,
): { readonly values: readonly number[]; readonly over: ClaimResiduals['over'] } => {
  const stoves = new Map<string, number[]>()
  for (const one of residuals) stoves.set(one.variant, [...(stoves.get(one.variant) ?? []), of(one)])
  return stoves.size >= ENOUGH_STOVES
    ? { values: [...stoves.values()].map((all) => sampleOf(all).mean), over: 'stoves' }
    : { values: residuals.map(of), over: 'burns' }
}

/** The mean of some figures with Student's interval; null for fewer than two. */
const meanOf = (values: readonly number[]): Difference | null => {
  if (values.length < 2) return null
  const sample = sampleOf(values)
  return differenceOf(sample.mean, standardDeviation(sample) / Math.sqrt(sample.count), sample.count - 1)
}

const biasOf = (residuals: readonly Residual[]): Pick<ClaimResiduals, 'bias' | 'over'> => {
  const { values, over } = counting(residuals, ({ ratio }) => Math.log(ratio))
  return { bias: meanOf(values), over }
}

/**
 * Whether this maker's mean lies beyond the edge of the band with the whole of its interval, on either side. Single burns
 * outside say less: where the truth lies just inside the edge, every other burn is out.
 */
const beyondBand = (
  claim: Claim,
  residuals: readonly Residual[],
  trials: readonly PredictedTrial[],
): boolean => {
  const edges = residuals.map(({ index }) => {
    const figure = trials[index]?.figures.find((one) => one.claim.key === claim.key)
    return figure?.band == null ? null : bandEdges(figure.band, figure.u ?? 0)
  })
  if (edges.some((one) => one === null)) return false
  const edge = new Map(residuals.map((one, i) => [one, edges[i] as ReturnType<typeof bandEdges>]))
  return (['high', 'low'] as const).some((which) => {
    const past = (one: Residual): number =>
      ((one.measured - (edge.get(one)?.[which] as number)) / one.predicted) * (which === 'high' ? 1 : -1)
    return (meanOf(counting(residuals, past).values)?.low ?? 0) > 0
  })
}

/** How many burns lie where. */
interface Counted {
  readonly outside: number
  readonly above: number
  readonly below: number
  readonly banded: number
}

const verdictOf = (
  count: number,
  chance: number | null,
  bias: Difference | null,
  beyond: boolean,
): ClaimVerdict => {
  if (count < LEAST_BURNS || bias === null) return 'few'
  if (beyond) return 'wrong'
  const oneSided = bias.low > 0 || bias.high < 0
  if (oneSided) return 'leans'
  return chance !== null && chance < RARE ? 'too sure' : 'holds'
}

const percent = (log: number): string => `${Math.round(100 * Math.abs(Math.expm1(log)))} %`

/** `28 % shorter (22 to 33 %)`. */
const biasText = ({ lessWord, moreWord }: Claim, { value, low, high }: Difference): string => {
  const word = value < 0 ? lessWord : moreWord
  const ends = value < 0 ? [-high, -low] : [low, high]
  const [least, most] = ends as [number, number]
  const from = (log: number): string => percent(value < 0 ? -log : log)
  return least >= 0
    ? `${percent(value)} ${word} (${from(least).replace(' %', '')} to ${from(most)})`
    : `${percent(value)} ${word} (from ${percent(low)} ${low < 0 ? lessWord : moreWord} to ${percent(high)} ${high < 0 ? lessWord : moreWord})`
}

const burnsText = (count: number, stoves: number): string =>
  `${count} burns${stoves > 1 ? ` of ${stoves} stoves` : ''}`

const sentenceOf = (
  claim: Claim,
  residuals: readonly Residual[],
  { outside, above, below, banded }: Counted,
  bias: Difference | null,
  verdict: ClaimVerdict,
): string => {
  const stoves = new Set(residuals.map(({ variant }) => variant)).size
  const burns = burnsText(residuals.length, stoves)
  const expected = String(Number((OUTSIDE * banded).toPrecision(2)))
  const counted = `${outside} of ${banded} burns lie outside the 5 to 95 % band`
  const about = bias === null ? '' : biasText(claim, bias)
  switch (verdict) {
    case 'few':
      return `${claim.name}: ${residuals.length === 0 ? 'no burn has it' : 'too few burns'} to judge the prediction by.`
    case 'wrong':
      return `${claim.name}: the model is wrong for you. Over ${burns} yours is ${about} than predicted, and that is beyond the band: ${counted}.`
    case 'too sure':
      return `${claim.name}: the model is too sure of itself. ${counted}, ${above} above and ${below} below, where chance alone would put about ${expected}; over ${burns} yours is ${about} than predicted.`
    case 'leans':
      return `${claim.name}: the model leans. Over ${burns} yours is ${about} than predicted${banded === 0 ? '' : `, though not beyond the band for certain (${outside} of ${banded} burns outside)`}.`
    case 'holds':
      return `${claim.name}: nothing against the model. Over ${burns} yours is ${about} than predicted${banded === 0 ? '' : `; ${outside} of ${banded} outside the bands`}.`
  }
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`

/** Every claim of the model over all trials: residuals, how many lie outside their bands, bias, and what that comes to. */
export const claimResiduals = (trials: readonly PredictedTrial[]): readonly ClaimResiduals[] =>
  CLAIMS.map((claim): ClaimResiduals => {
    const residuals = residualsOf(claim, trials)
    const sided = residuals.filter(({ side }) => side !== null)
    const on = (which: Residual['side']): number => sided.filter(({ side }) => side === which).length
    const [above, below] = [on('above'), on('below')]
    const counted: Counted = { outside: above + below, above, below, banded: sided.length }
    const chance = sided.length === 0 ? null : binomialTail(counted.outside, sided.length, OUTSIDE)
    const { bias, over } = biasOf(residuals)
    const verdict = verdictOf(residuals.length, chance, bias, beyondBand(claim, residuals, trials))
    return {
      claim,
      residuals,
      ...counted,
      chance,
      bias,
      over,
      verdict,
      sentence: capital(sentenceOf(claim, residuals, counted, bias, verdict)),
    }
  })

/** To go with every page of residuals; sentences. */
export const RESIDUAL_PROVENANCE: readonly string[] = [
  'A band says how far the model’s own guesses may put a figure out; what was measured is weighed with the uncertainty of its instruments. How burns of one stove differ is not in it.',
  '“Wrong for you” says that the mean of your burns lies outside the band, with the whole of its interval. It speaks of your stoves and your hand: burns of one maker share them, and a claim that is wrong for one maker may hold for the next.',
  'A band of 5 to 95 % leaves out one maker in ten even where the model is right, and with a maker all their burns: over all claims one maker in four finds one called wrong. One that is far out, or stays wrong on other stoves, counts for more.',
  PROVENANCE,
]
