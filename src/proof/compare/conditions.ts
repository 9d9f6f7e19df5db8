import type { Trial } from '#proof/trial/model.ts'
import type { Warning } from './model.ts'

interface Condition {
  readonly code: string
  /** What a burn stood under, in words: burns differ in it where the words do. */
  readonly of: (trial: Trial) => string
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
    code: 'pot',
    of: ({ pot }) => `${Math.round((pot.diameter ?? 0) * 1000)} ${Math.round(pot.weight * 100)}`,
    said: 'another pot',
    fix: 'Use one pot for all burns.',
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
]

interface Measure {
  readonly code: string
  readonly of: (trial: Trial) => number | null
  /** Means may differ by this share before it is said; judgements [1]. */
  readonly within: number
  readonly said: string
  readonly fix: string
}

/** Water in the pot at the start of the first phase [kg]. */
export const waterOf = ({ phases, pot }: Trial): number => (phases[0]?.from.pot ?? pot.weight) - pot.weight

const MEASURES: readonly Measure[] = [
  {
    code: 'water',
    of: waterOf,
    within: 0.05,
    said: 'more or less water',
    fix: 'Weigh the same water into the pot each time.',
  },
  {
    code: 'charge',
    of: ({ phases }) => phases[0]?.from.fuel ?? null,
    within: 0.05,
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
    [...new Set(trials.map(word))].sort().join('\n')
  return [
    ...CONDITIONS.flatMap((one) =>
      warn(
        unlike((mine) => kinds(mine, one) !== kinds(base, one)),
        one,
      ),
    ),
    ...MEASURES.flatMap((one) => {
      const all = (trials: readonly Trial[]) => trials.map(one.of).filter((value) => value !== null)
      const middle = mean(all(base))
      return warn(
        unlike((mine) => Math.abs(mean(all(mine)) - middle) > one.within * middle),
        one,
      )
    }),
  ]
}
