import { type Difference, welch } from '#proof/statistics/difference.ts'
import { equalSpreads } from '#proof/statistics/equalSpreads.ts'
import { adjustedPairs, degreesLeft, type Layout } from '#proof/statistics/layout.ts'
import { gamesHowell, type PairDifference, tukey } from '#proof/statistics/manyComparisons.ts'
import { sampleOf } from '#proof/statistics/sample.ts'
import type { CompareOptions, Method, Point } from './model.ts'

/** Fewer than this says too little of the spread to be worth taking days out for; a judgement. */
const LEAST_DF = 2
/**
 * With so many burns of each, unlike spreads cost Games and Howell little; below it their interval promises more than
 * it holds [bib:games1976], and one spread for all is better known. From memory.
 */
const ENOUGH_BURNS = 6
/** Spreads that are less likely than this to be alike are not taken to be. */
const UNLIKE = 0.05

/** Pairs by their names: the difference is `variant` − `against`. */
export type Pairs = (variant: string, against: string) => Difference | null

export interface Compared {
  readonly method: Method
  readonly pairs: Pairs
  /** Spread between burns that the method rests on; null where each variant has its own. */
  readonly residualSd: number | null
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
export const blocksOf = (points: readonly Point[]): BlockedBy => {
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

export const blockWords = (blockedBy: BlockedBy): string =>
  blockedBy.map((by) => BLOCK_WORDS[by]).join(' and ')

const groupsOf = (points: readonly Point[]): ReadonlyMap<string, readonly number[]> => {
  const groups = new Map<string, number[]>()
  for (const { variant, value } of points) groups.set(variant, [...(groups.get(variant) ?? []), value])
  return groups
}

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
})

const blocked = (points: readonly Point[], by: BlockedBy, confidence: number): Compared | null => {
  const adjusted = adjustedPairs(layoutOf(points, by), confidence)
  if (adjusted === null) return null
  const two = adjusted.groups.length === 2
  const words = blockWords(by)
  return {
    method: {
      kind: 'blocked',
      name: two ? `within ${words}, Student` : `within ${words}, Tukey–Kramer`,
      reason: `Every ${words} has burns of several variants, so what a damp day or a dry batch gives to all its burns is taken out: least squares with effects of variant and ${words}${
        two ? '' : '; the intervals hold for all pairs together'
      }.`,
      blockedBy: by,
      unlikeSpreads: null,
    },
    pairs: byName(adjusted.groups, adjusted.pairs),
    residualSd: adjusted.residualSd,
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
})

const ofSeveral = (
  groups: ReadonlyMap<string, readonly number[]>,
  kind: 'tukey' | 'games-howell' | null,
  confidence: number,
): Compared => {
  const names = [...groups.keys()]
  const samples = names.map((name) => sampleOf(groups.get(name) as readonly number[]))
  const unlikeSpreads = equalSpreads(samples)
  const few = samples.some(({ count }) => count < ENOUGH_BURNS)
  const unlike = unlikeSpreads !== null && unlikeSpreads < UNLIKE
  const chosen = kind ?? (few && !unlike ? 'tukey' : 'games-howell')
  const why =
    kind !== null
      ? 'As asked for'
      : chosen === 'tukey'
        ? `Fewer than ${ENOUGH_BURNS} burns of a variant say little of its own spread, and the spreads look alike enough to be taken as one`
        : few
          ? 'The burns of some variants spread clearly more than those of others, so each keeps its own spread; with so few burns the intervals may be somewhat too narrow'
          : `With ${ENOUGH_BURNS} burns of each and more, every variant can keep its own spread`
  const pairs = chosen === 'tukey' ? tukey(samples, confidence) : gamesHowell(samples, confidence)
  const df = samples.reduce((sum, { count }) => sum + count - 1, 0)
  const pooledVariance = samples.reduce((sum, { count, variance }) => sum + (count - 1) * variance, 0) / df
  return {
    method: {
      kind: chosen,
      name: chosen === 'tukey' ? 'Tukey–Kramer' : 'Games–Howell',
      reason: `${why}. The intervals hold for all pairs together.`,
      blockedBy: [],
      unlikeSpreads,
    },
    pairs: pairs === null ? () => null : byName(names, pairs),
    residualSd: chosen === 'tukey' ? Math.sqrt(pooledVariance) : null,
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
    : ofSeveral(groups, wanted === 'tukey' || wanted === 'games-howell' ? wanted : null, confidence)
}
