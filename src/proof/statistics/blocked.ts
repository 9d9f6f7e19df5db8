import { type Difference, differenceOf } from './difference.ts'
import { centred, leastSquares } from './leastSquares.ts'
import { sampleOf } from './sample.ts'

/** One burn as the comparison sees it. */
export interface Observation {
  readonly group: string
  /** Day, fuel batch: what burns have in common besides the stove; null where that is not known. */
  readonly block: string | null
  readonly value: number
}

const kindsOf = (values: readonly string[]): readonly string[] => [...new Set(values)]

const indicator = (all: readonly string[], one: string): readonly number[] =>
  all.map((value) => Number(value === one))

/** Columns that tell the groups apart, the first left out, and a level. */
const groupColumns = (groups: readonly string[]): readonly (readonly number[])[] => [
  groups.map(() => 1),
  ...kindsOf(groups)
    .slice(1)
    .map((one) => indicator(groups, one)),
]

/**
 * `group` − `reference` with the blocks taken out: what a good day or a dry batch gives to all burns of it counts for
 * none of them. Least squares with additive effects of group and block, over all groups together. Null where blocks
 * are not told, where they cannot be told from the groups, or where nothing is left to judge the spread by.
 */
export const blockedDifference = (
  observations: readonly Observation[],
  group: string,
  reference: string,
  confidence = 0.95,
): Difference | null => {
  const blocks = observations.map(({ block }) => block)
  if (blocks.some((block) => block === null)) return null
  const names = blocks as readonly string[]
  if (kindsOf(names).length < 2) return null
  // The reference first, so that every coefficient is a difference from it.
  const sorted = [...observations].sort(
    (a, b) => Number(b.group === reference) - Number(a.group === reference),
  )
  const groups = sorted.map((one) => one.group)
  if (groups[0] !== reference) return null
  const place = kindsOf(groups).indexOf(group)
  if (place < 1) return null
  const ofBlocks = sorted.map(({ block }) => block as string)
  const { mean } = sampleOf(sorted.map(({ value }) => value))
  const fit = leastSquares(
    [
      ...groupColumns(groups),
      ...kindsOf(ofBlocks)
        .slice(1)
        .map((one) => indicator(ofBlocks, one)),
    ],
    sorted.map(({ value }) => value - mean),
  )
  return fit === null
    ? null
    : differenceOf(fit.coefficients[place] as number, fit.standardErrors[place] as number, fit.df, confidence)
}

/**
 * How values drift with `along` (time of day, place in the order) once the differences between groups are taken out;
 * in the unit of the values per unit of `along`. Null where it cannot be told from the groups.
 */
export const driftWithin = (
  groups: readonly string[],
  values: readonly number[],
  along: readonly number[],
  confidence = 0.95,
): Difference | null => {
  if (values.length < 4) return null
  const columns = [...groupColumns(groups), centred(along)]
  const fit = leastSquares(columns, centred(values))
  return fit === null
    ? null
    : differenceOf(fit.coefficients.at(-1) as number, fit.standardErrors.at(-1) as number, fit.df, confidence)
}
