import type { Trial } from '#proof/trial/model.ts'
import type { Warning } from './model.ts'

interface Condition {
  readonly code: string
  /** What a burn stood under, in words: burns differ in it where the words do. Null: the trial does not say. */
  readonly of: (trial: Trial) => string | null
  readonly said: string
  readonly fix: string
}

const CONDITIONS: readonly Condition[] = [
  {
    code: 'fuel',
    of: ({ fuel }) => fuel.kind,
    said: 'another fuel',
    fix: 'Compare burns of one fuel.',
  },
  {
    code: 'start',
    of: ({ start }) => start,
    said: 'another start, cold or hot',
    fix: 'Let the stove go cold, or compare hot starts with hot starts.',
  },
  {
    code: 'lid',
    of: ({ pot }) => (pot.lid ? 'a lid' : 'no lid'),
    said: 'the lid on against the lid off',
    fix: 'Use the lid always or never.',
  },
  {
    code: 'instruments',
    of: ({ instruments }) => JSON.stringify(instruments),
    said: 'other instruments',
    fix: 'Use one scale, one thermometer and one clock for all burns.',
  },
  {
    code: 'heating-value',
    of: ({ fuel }) => JSON.stringify([fuel.heatingValue ?? null, fuel.charHeatingValue ?? null]),
    said: 'another heating value for fuel or char',
    fix: 'Give all burns of one fuel the same heating values.',
  },
  {
    code: 'weighing',
    of: ({ fuel }) => fuel.weighed ?? null,
    said: 'fuel weighed at another moment, before lighting or as the phase began',
    fix: 'Weigh it at the same moment each time.',
  },
  {
    code: 'kindling',
    of: ({ kindling }) => kindling?.weighed ?? null,
    said: 'kindling in the weight of the fuel against kindling beside it',
    fix: 'Weigh the kindling with the fuel always or never.',
  },
]

interface Measure {
  readonly code: string
  readonly of: (trial: Trial) => number | null
  /** So far means may differ before it is said, as a share or in the unit of the measure; judgements. */
  readonly within: { readonly share: number } | { readonly by: number }
  readonly said: string
  readonly fix: string
}

/** Water in the pot at the start of the first phase [kg]. */
export const waterOf = ({ phases, pot }: Trial): number => (phases[0]?.from.pot ?? pot.weight) - pot.weight

const moistureOf = ({ fuel: { moisture } }: Trial): number =>
  'meter' in moisture ? moisture.meter : (moisture.before - moisture.after) / moisture.before

const MEASURES: readonly Measure[] = [
  {
    code: 'pot',
    of: ({ pot }) => pot.weight,
    within: { share: 0.05 },
    said: 'another pot',
    fix: 'Use one pot for all burns.',
  },
  {
    code: 'pot',
    of: ({ pot }) => pot.diameter ?? null,
    within: { share: 0.03 },
    said: 'a wider or narrower pot',
    fix: 'Use one pot for all burns.',
  },
  {
    code: 'moisture',
    of: moistureOf,
    within: { by: 0.03 },
    said: 'damper or drier fuel',
    fix: 'Let each variant have burns out of every batch.',
  },
  {
    code: 'wind',
    of: ({ weather }) => weather.wind ?? null,
    within: { by: 1 },
    said: 'more or less wind',
    fix: 'Burn every variant on every day, or behind a screen.',
  },
  {
    code: 'water',
    of: waterOf,
    within: { share: 0.05 },
    said: 'more or less water',
    fix: 'Weigh the same water into the pot each time.',
  },
  {
    code: 'charge',
    of: ({ phases }) => phases[0]?.from.fuel ?? null,
    within: { share: 0.05 },
    said: 'more or less fuel in the can',
    fix: 'Weigh the same fuel in each time.',
  },
]

const quoted = (name: string): string => `“${name}”`
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length

/** Where variants were not burnt alike, so that the difference may lie in that. */
export const conditionWarnings = (
  burns: readonly { readonly variant: string; readonly trial: Trial }[],
  reference: string,
  variants: readonly string[],
): readonly Warning[] => {
  const of = (variant: string) => burns.filter((one) => one.variant === variant).map(({ trial }) => trial)
  const others = variants.filter((one) => one !== reference)
  const base = of(reference)
  const unlike = (differs: (mine: readonly Trial[]) => boolean): readonly string[] =>
    others.filter((variant) => differs(of(variant)))
  const warn = (
    some: readonly string[],
    { code, said, fix }: Pick<Condition, 'code' | 'said' | 'fix'>,
  ): readonly Warning[] =>
    some.length === 0
      ? []
      : [
          {
            code: `conditions.${code}`,
            sentence: `${listed(some.map(quoted))} and ${quoted(reference)} were burnt with ${said}: that alone may be the difference.`,
            fix,
          },
        ]
  const kinds = (trials: readonly Trial[], { of: word }: Condition): string =>
    [...new Set(trials.flatMap((trial) => word(trial) ?? []))].sort().join('\n')
  const differ = (mine: string, other: string): boolean => mine !== '' && other !== '' && mine !== other
  return [
    ...CONDITIONS.flatMap((one) =>
      warn(
        unlike((mine) => differ(kinds(mine, one), kinds(base, one))),
        one,
      ),
    ),
    ...MEASURES.flatMap((one) => {
      const all = (trials: readonly Trial[]) => trials.map(one.of).filter((value) => value !== null)
      const of = all(base)
      if (of.length === 0) return []
      const middle = mean(of)
      const most = 'by' in one.within ? one.within.by : one.within.share * Math.abs(middle)
      return warn(
        unlike((mine) => {
          const theirs = all(mine)
          return theirs.length > 0 && Math.abs(mean(theirs) - middle) > most
        }),
        one,
      )
    }),
  ]
}
