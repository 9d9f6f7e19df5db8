import { type Difference, welch } from '#proof/statistics/difference.ts'
import { equalSpreads } from '#proof/statistics/equalSpreads.ts'
import { adjustedPairs, degreesLeft, type Layout } from '#proof/statistics/layout.ts'
import { dunnettT3, gamesHowell, type PairDifference, tukey } from '#proof/statistics/manyComparisons.ts'
import { sampleOf } from '#proof/statistics/sample.ts'
import type { CompareOptions, Method, Point } from './model.ts'
import { oneSpread } from './oneSpread.ts'

/** Fewer than this says too little of the spread to be worth taking days out for; a judgement. */
const LEAST_DF = 2
/** From so many burns of each on Games and Howell's intervals hold what they promise, with three it is doubtful [bib:games1976]. */
const ENOUGH_BURNS = 6

/** Pairs by their names: the difference is `variant` − `against`. */
export type Pairs = (variant: string, against: string) => Difference | null

export interface Compared {
  readonly method: Method
  readonly pairs: Pairs
  /** Spread between burns that the method rests on; null where each variant has its own. */
  readonly residualSd: number | null
  /** Degrees of freedom that so many burns of each would leave to judge that spread by; null where each variant has its own. */
  readonly degrees: ((burns: number) => number) | null
}

type BlockedBy = Method['blockedBy']

const layoutOf = (points: readonly Point[], blockedBy: BlockedBy): Layout => ({
  values: points.map(({ value }) => value),
  groups: points.map(({ variant }) => variant),
  factors: blockedBy.map((by) =>
    points.map(({ block, batch }) => (by === 'block' ? block : (batch as string))),
  ),
})

const several = (names: readonly (string | null)[]): boolean => new Set(names).size > 1

/** What may be taken out, most first. */
const candidates = (points: readonly Point[]): readonly BlockedBy[] => {
  const blocks = several(points.map(({ block }) => block))
  const batches = points.every(({ batch }) => batch !== null) && several(points.map(({ batch }) => batch))
  return [
    ...(blocks && batches ? [['block', 'batch'] as const] : []),
    ...(blocks ? [['block'] as const] : []),
    ...(batches ? [['batch'] as const] : []),
  ]
}

/** Days and batches that can be told from the variants; none where they cannot, or too little would be left. */
const blocksOf = (points: readonly Point[]): BlockedBy => {
  for (const by of candidates(points)) {
    const left = degreesLeft(layoutOf(points, by))
    if (left === null || left < LEAST_DF) continue
    // A batch that was burnt on its own day is taken out with the day.
    if (by.length > 1 && left === degreesLeft(layoutOf(points, ['block']))) return ['block']
    return by
  }
  return []
}

const BLOCK_WORDS = { block: 'day', batch: 'fuel batch' } as const

/** What was taken out, in words: `day and fuel batch`. */
export const blockWords = (blockedBy: BlockedBy): string =>
  blockedBy.map((by) => BLOCK_WORDS[by]).join(' and ')

const groupsOf = (points: readonly Point[]): ReadonlyMap<string, readonly number[]> => {
  const groups = new Map<string, number[]>()
  for (const { variant, value } of points) groups.set(variant, [...(groups.get(variant) ?? []), value])
  return groups
}

const alike = (counts: readonly number[]): boolean => new Set(counts).size === 1

const turned = (difference: Difference): Difference => ({
  ...difference,
  // Taken from 0, so that no -0 comes of it.
  value: 0 - difference.value,
  t: 0 - difference.t,
  low: 0 - difference.high,
  high: 0 - difference.low,
})

/** Pairs counted in a list, found by name and either way round. */
const byName =
  (names: readonly string[], pairs: readonly PairDifference[]): Pairs =>
  (variant, against) => {
    const [i, j] = [names.indexOf(variant), names.indexOf(against)]
    const found = pairs.find(
      ({ first, second }) => (first === i && second === j) || (first === j && second === i),
    )
    if (found === undefined) return null
    const { first, second: _, ...difference } = found
    return first === i ? difference : turned(difference)
  }

const none = (reason: string): Compared => ({
  method: { kind: 'none', name: 'no comparison', reason, blockedBy: [], unlikeSpreads: null },
  pairs: () => null,
  residualSd: null,
  degrees: null,
})

const blocked = (points: readonly Point[], by: BlockedBy, confidence: number): Compared | null => {
  const layout = layoutOf(points, by)
  const adjusted = adjustedPairs(layout, confidence)
  if (adjusted === null) return null
  const variants = adjusted.groups.length
  const two = variants === 2
  const words = blockWords(by)
  const batches = by.includes('batch') ? new Set(layout.factors.at(-1)).size - 1 : 0
  return {
    method: {
      kind: 'blocked',
      name: two ? `within ${words}, Student` : `within ${words}, Tukey–Kramer`,
      reason: `Every ${words} has burns of several variants, so what a damp day or a dry batch gives to all its burns is taken out: least squares with effects of variant and ${words}${
        two
          ? '.'
          : `; the intervals hold for all pairs together. ${oneSpread(variants, alike([...groupsOf(points).values()].map(({ length }) => length)), confidence)}`
      }`,
      blockedBy: by,
      unlikeSpreads: null,
    },
    pairs: byName(adjusted.groups, adjusted.pairs),
    residualSd: adjusted.residualSd,
    // As if every further day had every variant once.
    degrees: (burns) => Math.max(1, (variants - 1) * (burns - 1) - batches),
  }
}

const ofTwo = (groups: ReadonlyMap<string, readonly number[]>, confidence: number): Compared => ({
  method: {
    kind: 'welch',
    name: 'Welch',
    reason: 'Two variants; their burns need not spread alike.',
    blockedBy: [],
    unlikeSpreads: null,
  },
  pairs: (variant, against) => {
    const [a, b] = [groups.get(variant), groups.get(against)]
    return a === undefined || b === undefined ? null : welch(sampleOf(a), sampleOf(b), confidence)
  },
  residualSd: null,
  degrees: null,
})

type ForSeveral = 'tukey' | 'games-howell' | 'dunnett-t3'

const SEVERAL: Readonly<
  Record<ForSeveral, { readonly name: string; readonly pairs: typeof tukey; readonly why: string }>
> = {
  tukey: { name: 'Tukey–Kramer', pairs: tukey, why: '' },
  'games-howell': {
    name: 'Games–Howell',
    pairs: gamesHowell,
    why: `With ${ENOUGH_BURNS} burns of each and more, every variant keeps its own spread`,
  },
  'dunnett-t3': {
    name: 'Dunnett T3',
    pairs: dunnettT3,
    why: `Every variant keeps its own spread, of which fewer than ${ENOUGH_BURNS} burns say little, so that the intervals are wide. Burnt in rounds, every variant once a day, as many burns tell more`,
  },
}

const ofSeveral = (
  groups: ReadonlyMap<string, readonly number[]>,
  wanted: ForSeveral | null,
  confidence: number,
): Compared => {
  const names = [...groups.keys()]
  const samples = names.map((name) => sampleOf(groups.get(name) as readonly number[]))
  // By the number of burns alone: a look at the spreads first would cost the promise that the intervals make [bib:zimmerman2004].
  const few = samples.some(({ count }) => count < ENOUGH_BURNS)
  const kind = wanted ?? (few ? 'dunnett-t3' : 'games-howell')
  const { name, pairs: compared, why } = SEVERAL[kind]
  const pairs = compared(samples, confidence)
  const df = samples.reduce((sum, { count }) => sum + count - 1, 0)
  const pooledVariance = samples.reduce((sum, { count, variance }) => sum + (count - 1) * variance, 0) / df
  const shared = kind === 'tukey'
  return {
    method: {
      kind,
      name,
      reason: `${wanted === null ? why : 'As asked for'}. The intervals hold for all pairs together.${
        shared ? ` ${oneSpread(names.length, alike(samples.map(({ count }) => count)), confidence)}` : ''
      }`,
      blockedBy: [],
      unlikeSpreads: equalSpreads(samples),
    },
    pairs: pairs === null ? () => null : byName(names, pairs),
    residualSd: shared ? Math.sqrt(pooledVariance) : null,
    degrees: shared ? (burns) => names.length * (burns - 1) : null,
  }
}

/** Compares points of at least two variants, each with at least two burns, by what suits them or by what was asked for. */
export const comparePoints = (
  all: readonly Point[],
  confidence: number,
  wanted: CompareOptions['method'],
): Compared => {
  const counts = groupsOf(all)
  const points = all.filter(({ variant }) => (counts.get(variant) as readonly number[]).length > 1)
  const groups = groupsOf(points)
  if (groups.size < 2) return none('At least two variants want at least two burns each.')
  if (wanted === undefined || wanted === 'blocked') {
    const by = blocksOf(points)
    const within = by.length === 0 ? null : blocked(points, by, confidence)
    if (within !== null) return within
    if (wanted === 'blocked')
      return none('Days and batches cannot be told from the variants, or too few burns are left to judge by.')
  }
  if (wanted === 'welch' && groups.size > 2)
    return {
      ...ofTwo(groups, confidence),
      method: {
        kind: 'welch',
        name: 'Welch, pair by pair',
        reason: `As asked for. Each interval holds for its own pair only: of ${(groups.size * (groups.size - 1)) / 2} pairs some show by luck.`,
        blockedBy: [],
        unlikeSpreads: null,
      },
    }
  return groups.size === 2 && (wanted === undefined || wanted === 'welch')
    ? ofTwo(groups, confidence)
    : ofSeveral(groups, wanted !== undefined && wanted in SEVERAL ? (wanted as ForSeveral) : null, confidence)
}
