import { type Difference, differenceOf } from './difference.ts'
import { centred, leastSquares } from './leastSquares.ts'
import { byRange, type PairDifference, pairDifference, pairsOf } from './manyComparisons.ts'

/** Burns with all that may have pushed them besides the stove. All lists are of one length. */
export interface Layout {
  readonly values: readonly number[]
  readonly groups: readonly string[]
  /** Day, fuel batch: each names for every burn what it shares with others. */
  readonly factors: readonly (readonly string[])[]
  /** Place in the day, or time: something that may push evenly. */
  readonly along?: readonly number[]
}

const kindsOf = (names: readonly string[]): readonly string[] => [...new Set(names)]

const indicators = (names: readonly string[]): readonly (readonly number[])[] =>
  kindsOf(names)
    .slice(1)
    .map((kind) => names.map((name) => Number(name === kind)))

/** A column less its shadow on those before it is lost below this share of its length. */
const DEPENDENT = 1e-9

const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] as number), 0)

/** Which columns say something that those before them do not (Gram and Schmidt, twice over). */
const independent = (columns: readonly (readonly number[])[]): readonly boolean[] => {
  const basis: (readonly number[])[] = []
  return columns.map((column) => {
    let rest = column
    for (let pass = 0; pass < 2; pass++)
      for (const q of basis) {
        const by = inner(q, rest)
        rest = rest.map((value, i) => value - by * (q[i] as number))
      }
    const size = Math.sqrt(inner(rest, rest))
    if (!(size > DEPENDENT * Math.sqrt(inner(column, column)))) return false
    basis.push(rest.map((value) => value / size))
    return true
  })
}

/** What days and batches take up, less what they say twice (a batch that was burnt on one day, and nothing else on it). */
const nuisance = ({ values, factors, along }: Layout): readonly (readonly number[])[] => {
  const columns = [
    values.map(() => 1),
    ...factors.flatMap(indicators),
    ...(along === undefined ? [] : [centred(along)]),
  ]
  const told = independent(columns)
  return columns.filter((_, i) => told[i])
}

const separable = (layout: Layout): boolean => {
  const columns = [...nuisance(layout), ...indicators(layout.groups)]
  return independent(columns).every(Boolean)
}

/** Degrees of freedom that are left to judge the spread by; null where groups cannot be told from days and batches. */
export const degreesLeft = (layout: Layout): number | null =>
  separable(layout)
    ? layout.values.length - nuisance(layout).length - (kindsOf(layout.groups).length - 1)
    : null

/** Pairs of groups with what their burns share taken out. */
export interface Adjusted {
  /** Names of the groups; the pairs count in this list. */
  readonly groups: readonly string[]
  readonly pairs: readonly PairDifference[]
  /** What is left of the spread once groups, days and batches are taken out, in the unit of the values. */
  readonly residualSd: number
  readonly df: number
}

/**
 * All pairs of groups by least squares with additive effects of group, of every factor and along `along`, each pair
 * with an interval that holds for all of them together: Tukey and Kramer's [bib:kramer1956], exact for two groups
 * (Student's) and for complete blocks. Null where groups cannot be told from the factors, or nothing is left to judge
 * the spread by.
 */
export const adjustedPairs = (layout: Layout, confidence = 0.95): Adjusted | null => {
  const df = degreesLeft(layout)
  const groups = kindsOf(layout.groups)
  if (df === null || df < 1 || groups.length < 2) return null
  const base = nuisance(layout)
  const y = centred(layout.values)
  const against = (reference: string) => {
    const others = groups.filter((one) => one !== reference)
    const columns = others.map((one) => layout.groups.map((name) => Number(name === one)))
    const fit = leastSquares([...base, ...columns], y)
    if (fit === null) return null
    const at = (group: string): number => base.length + others.indexOf(group)
    return { fit, at }
  }
  const range = byRange(groups.length)
  const bound = range.bound(confidence, df)
  const pairs: PairDifference[] = []
  let residualSd = 0
  for (const [first, second] of pairsOf(groups.length)) {
    const found = against(groups[second] as string)
    if (found === null) return null
    const { fit, at } = found
    const i = at(groups[first] as string)
    residualSd = fit.residualSd
    const pair = {
      value: fit.coefficients[i] as number,
      standardError: fit.standardErrors[i] as number,
      df,
    }
    pairs.push(pairDifference(first, second, pair, range, confidence, bound))
  }
  return { groups, pairs, residualSd, df }
}

/**
 * How values drift along `along` once groups and factors are taken out; in the unit of the values per unit of
 * `along`. Null where it cannot be told from them, or nothing is left to judge the spread by.
 */
export const driftAlong = (
  layout: Layout & { readonly along: readonly number[] },
  confidence = 0.95,
): Difference | null => {
  const { along, ...rest } = layout
  const columns = [...nuisance(rest), ...indicators(layout.groups), centred(along)]
  const told = independent(columns)
  if (told.at(-1) !== true) return null
  const fit = leastSquares(
    columns.filter((_, i) => told[i]),
    centred(layout.values),
  )
  return fit === null
    ? null
    : differenceOf(fit.coefficients.at(-1) as number, fit.standardErrors.at(-1) as number, fit.df, confidence)
}
