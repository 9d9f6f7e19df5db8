import { type SeriesVariant, variantFile } from './variants.ts'

/**
 * What the files of the series do not say themselves, as `examples/series/series.json`: which stove was made from which, what
 * was changed and why, and in which order they were burnt. A new workshop lays its demo in by it. The first variant was made
 * from the plan in `examples/`, the others from the first.
 */
export const familyText = (
  plan: string,
  [first, ...others]: readonly SeriesVariant[],
  trials: readonly string[],
): string => {
  if (first === undefined) throw new Error('The series has no stove')
  const made = (variant: SeriesVariant) => ({
    file: variantFile(variant),
    from: variantFile(first),
    note: `${variant.changed} ${variant.why}`,
  })
  const series = {
    about:
      'Invented demo data, made by scripts/series.ts: the family of the stoves, and their burns in order.',
    stoves: [{ file: variantFile(first), from: plan, note: first.why }, ...others.map(made)],
    trials,
  }
  return `${JSON.stringify(series, null, 2)}\n`
}
