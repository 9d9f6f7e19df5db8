import { differenceText } from './amount.ts'
import type { MetricComparison, VariantFigures, Warning } from './model.ts'

/** Drift of what was asked, and by how much it may favour a variant that was burnt later. */
export const driftWarnings = (question: MetricComparison | undefined): readonly Warning[] => {
  if (question?.drift?.sentence == null) return []
  const { metric, drift, variants } = question
  const place = ({ points }: VariantFigures): number | null =>
    points.every(({ placeInDay }) => placeInDay !== null)
      ? points.reduce((sum, { placeInDay }) => sum + (placeInDay as number), 0) / points.length
      : null
  const [first, ...others] = variants
  const start = first === undefined ? null : place(first)
  const worst = others
    .flatMap((variant) => {
      const here = place(variant)
      return start === null || here === null
        ? []
        : [{ variant: variant.variant, by: (here - start) * drift.slope.value }]
    })
    .sort((a, b) => Math.abs(b.by) - Math.abs(a.by))[0]
  const said =
    drift.over === 'day' && worst !== undefined && Math.abs(worst.by) > 0
      ? ` Most of it falls on “${worst.variant}”: ${differenceText(metric, Math.abs(worst.by), Math.abs(worst.by))} of its mean come from when it was burnt.`
      : ''
  return [
    {
      code: 'drift',
      sentence: `${drift.sentence}${said}`,
      fix: 'Draw the order of every round by lot, so that it falls on all variants alike, and look for what warms, dries or tires.',
    },
  ]
}
