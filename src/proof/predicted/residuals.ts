import { type Difference, differenceOf } from '#proof/statistics/difference.ts'
import { sampleOf, standardDeviation } from '#proof/statistics/sample.ts'
import { CLAIMS } from './claims.ts'
import type { Claim, ClaimResiduals, ClaimVerdict, PredictedTrial, Residual } from './model.ts'

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

const biasOf = (residuals: readonly Residual[]): Pick<ClaimResiduals, 'bias' | 'over'> => {
  const stoves = new Map<string, number[]>()
  for (const { variant, ratio } of residuals)
    stoves.set(variant, [...(stoves.get(variant) ?? []), Math.log(ratio)])
  const over = stoves.size >= ENOUGH_STOVES ? 'stoves' : 'burns'
  const values =
    over === 'stoves'
      ? [...stoves.values()].map((logs) => sampleOf(logs).mean)
      : residuals.map(({ ratio }) => Math.log(ratio))
  if (values.length < 2) return { bias: null, over }
  const sample = sampleOf(values)
  return {
    bias: differenceOf(sample.mean, standardDeviation(sample) / Math.sqrt(sample.count), sample.count - 1),
    over,
  }
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
  { above, below }: Counted,
  chance: number | null,
  bias: Difference | null,
): ClaimVerdict => {
  if (count < LEAST_BURNS || bias === null) return 'few'
  const oneSided = bias.low > 0 || bias.high < 0
  if (chance !== null && chance < RARE) return oneSided || above === 0 || below === 0 ? 'wrong' : 'too sure'
  return oneSided ? 'leans' : 'holds'
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
  const counted = `${outside} of ${banded} burns lie outside the 5 to 95 % band, where chance alone would put about ${expected}`
  const about = bias === null ? '' : biasText(claim, bias)
  switch (verdict) {
    case 'few':
      return `${claim.name}: ${residuals.length === 0 ? 'no burn has it' : 'too few burns'} to judge the prediction by.`
    case 'wrong':
      return `${claim.name}: the model is wrong for you. ${counted}; over ${burns} yours is ${about} than predicted.`
    case 'too sure':
      return `${claim.name}: the model is too sure of itself. ${counted}, ${above} above and ${below} below; over ${burns} yours is ${about} than predicted.`
    case 'leans':
      return `${claim.name}: the model leans. Over ${burns} yours is ${about} than predicted${banded === 0 ? '' : `, though within the bands (${outside} of ${banded} outside)`}.`
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
    const verdict = verdictOf(residuals.length, counted, chance, bias)
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
  'A band says how far the model’s own guesses may put a figure out; what was measured is weighed with the uncertainty of its instruments.',
  'Burns of one maker share stove, hand and scale, so they are not as many independent tries as they are burns: “more often than chance” counts them as if they were, and a claim that is wrong for one stove may hold for the next.',
  'Whoever looks at ten claims will find about one of them out of its band by luck.',
]
