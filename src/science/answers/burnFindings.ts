import { wide } from '#basis/text/bothUnits.ts'
import { predictSteady } from '#science/steady/predict.ts'
import type { Moment, Passage, Regime } from '#science/steady/prediction.ts'
import { note, warn } from '#stove/check/finding.ts'
import { percent } from '#stove/check/phrase.ts'
import type { Finding, Stove } from '#stove/model.ts'

const AILS: Readonly<Record<Exclude<Regime, 'clean'>, readonly [what: string, fix: string]>> = {
  smoulder: [
    'the fuel gets so little air that it smoulders: smoke, carbon monoxide, and a flame that may not hold',
    'Give the fuel more air: a freer floor, coarser fuel or less of it, or more draught.',
  ],
  'rich and smoky': [
    'the gas leaves with too little air to burn it: a smoky flame, and carbon monoxide',
    'Give the gas more secondary or tertiary air, or the fuel less.',
  ],
  'quenched lean': [
    'so much air falls on the gas that it may chill the flame and put it out',
    'Make fewer or smaller secondary holes.',
  ],
}

/** Widest of what is told to be in the way; smaller shares are not worth a maker's time [1]. */
const WORTH_NAMING = 0.1

const taking = ({ name, kind, area, lossShare }: Passage): string =>
  `${name}${kind === 'bed' ? '' : `, ${wide(area)}`}, with ${percent(lossShare)}`

const widen = ({ kind }: Passage): string =>
  kind === 'bed'
    ? 'To let more air to the fuel, take coarser fuel or less of it; what it brings the next prediction shows.'
    : 'To let more air and gas through, widen that first; what it brings the next prediction shows.'

const chokeOf = ({ passages }: Moment, fuelCan: string): Finding | null => {
  const [first, second] = [...passages].sort((one, other) => other.lossShare - one.lossShare)
  if (first === undefined || first.lossShare < WORTH_NAMING) return null
  const next = second === undefined || second.lossShare < WORTH_NAMING ? '' : `; then ${taking(second)}`
  return note(
    'areas.choke',
    { part: first.part ?? fuelCan, opening: first.opening },
    `Air and gas are choked most at: ${taking(first)} of the draught’s work${next}.`,
    widen(first),
  )
}

const fuelCanOf = (stove: Stove): string =>
  [...stove.parts].find(([, part]) => part.form === 'can' && part.role === 'fuel can')?.[0] ??
  [...stove.parts.keys()][0] ??
  ''

/**
 * What the steady burn says of a stove in calm, mild weather: whether it burns clean, and where the draught is
 * spent. Empty where the fuel is not known: reading the fuel says so. Beside `checkStove`, which looks at tin alone.
 */
export const burnFindings = (stove: Stove): readonly Finding[] => {
  const predicted = predictSteady(stove)
  if (!predicted.ok) return []
  const part = fuelCanOf(stove)
  if (predicted.value.kind === 'no burn') {
    const { code, sentence } = predicted.value.noBurn
    return [
      warn(`burn.${code}`, { part }, sentence, 'See what the other findings say of the way of the air.'),
    ]
  }
  const { halfway } = predicted.value.prediction
  const ails = halfway.regime === 'clean' ? null : AILS[halfway.regime]
  return [
    ...(ails === null
      ? []
      : [
          warn(
            `burn.${halfway.regime.replace(/ .*/, '')}`,
            { part },
            `Predicted for a calm, mild day: ${ails[0]}.`,
            ails[1],
          ),
        ]),
    chokeOf(halfway, part),
  ].filter((finding) => finding !== null)
}
