import { columns, wrap } from '#compose/page/text.ts'
import { amountText, rangeText } from '#proof/compare/amount.ts'
import { PROVENANCE } from '#proof/metrics/worked.ts'
import type { ClaimResiduals, PredictedFigure, PredictedTrial } from '#proof/predicted/model.ts'
import { RESIDUAL_PROVENANCE } from '#proof/predicted/residuals.ts'
import { inCustomary, metricPart } from './inOne.ts'

const ENDS: Readonly<Record<PredictedTrial['endsAt'], string>> = {
  boil: 'the phase ends at the boil, in the prediction at its own',
  'flame out': 'the phase ends with the flame, in the prediction with its own',
  'as long': 'the phase lasts as long as in the trial',
}
const SIDES = { within: 'within', above: 'above', below: 'below' } as const

const row = ({ claim, predicted, band, measured, u, side }: PredictedFigure): readonly string[] => [
  claim.name,
  measured === null ? 'none' : amountText(claim, measured, 2 * (u ?? 0)),
  predicted === null ? 'none' : amountText(claim, predicted, band === null ? 0 : (band.high - band.low) / 2),
  band === null ? '' : rangeText(claim, band.low, band.high),
  side === null ? '' : SIDES[side],
]

const FIGURES = [1, 2, 3] as const

const tableOf = (rows: readonly (readonly string[])[], width: number): string =>
  columns(
    [['', 'measured', 'predicted', '5 to 95 %', ''], ...rows],
    ['left', 'right', 'right', 'right', 'left'],
    width,
  )

/** One table in each system of units: a row of four figures has no room for both. */
const figuresTables = (figures: readonly PredictedFigure[], width: number): readonly (string | null)[] => {
  const rows = figures.filter(({ measured, predicted }) => measured !== null || predicted !== null).map(row)
  const customary = inCustomary(rows, FIGURES)
  return [
    tableOf(
      rows.map((cells) => cells.map(metricPart)),
      width,
    ),
    customary === null ? null : tableOf(customary, width),
  ]
}

/** What not every set of coefficients comes to, said once for all claims of one share. */
const rareBands = ({ figures }: PredictedTrial): readonly string[] => {
  const claims = new Map<number, string[]>()
  for (const { claim, band, measured } of figures) {
    if (band === null || band.share >= 0.995 || measured === null) continue
    const share = Math.round(100 * band.share)
    claims.set(share, [...(claims.get(share) ?? []), claim.name])
  }
  return [...claims].map(
    ([share, names]) =>
      `Only ${share} % of the sets of coefficients come to a figure for: ${names.join('; ')}. The bands are of those sets.`,
  )
}

/** One trial beside its predicted burn. */
export const predictedBlocks = (one: PredictedTrial, width: number): readonly (string | null)[] => [
  wrap(`${one.trial} (“${one.variant}”) beside ${one.stove} as predicted; ${ENDS[one.endsAt]}`, width),
  one.noBurn === null ? null : wrap(`In the model it does not burn: ${one.noBurn}`, width),
  ...figuresTables(one.figures, width),
  [...rareBands(one), ...one.cautions].length === 0
    ? null
    : [...rareBands(one), ...one.cautions].map((line) => wrap(line, width)).join('\n'),
  wrap(PROVENANCE, width),
]

const ORDER: Readonly<Record<ClaimResiduals['verdict'], number>> = {
  wrong: 0,
  'too sure': 1,
  leans: 2,
  holds: 3,
  few: 4,
}

/** Over all trials: which claims of the model are wrong for this maker, the worst first. */
export const residualBlocks = (
  claims: readonly ClaimResiduals[],
  trials: number,
  width: number,
): readonly (string | null)[] => [
  [
    `Over ${trials} trials, claim by claim`,
    ...[...claims]
      .sort((a, b) => ORDER[a.verdict] - ORDER[b.verdict])
      .map(({ sentence }) => wrap(sentence, width, '  ', '    ')),
  ].join('\n'),
  RESIDUAL_PROVENANCE.map((line) => wrap(line, width)).join('\n'),
]

/** Trials that lie outside, one a line. */
export const outsideBlock = (trials: readonly PredictedTrial[], width: number): string | null => {
  const lines = trials.flatMap(({ trial, variant, noBurn, figures }) => {
    const out = figures.filter(({ side }) => side === 'above' || side === 'below')
    if (noBurn !== null) return [`${trial} (“${variant}”): in the model it does not burn. ${noBurn}`]
    return out.length === 0
      ? []
      : [`${trial} (“${variant}”): ${out.map(({ claim, side }) => `${claim.name} ${side}`).join(', ')}`]
  })
  return lines.length === 0
    ? null
    : ['Outside of their bands', ...lines.map((line) => wrap(line, width, '  ', '    '))].join('\n')
}
