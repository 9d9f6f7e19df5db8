import type { Contrast, MetricComparison, VariantVerdict, Verdict } from './model.ts'

const contrastIn = (
  { contrasts }: MetricComparison,
  variant: string,
  reference: string,
): Contrast | undefined => contrasts.find((one) => one.variant === variant && one.against === reference)

const HEADLINE: Readonly<Record<Verdict, (name: string, reference: string) => string>> = {
  better: (name) => `${name} helps.`,
  worse: (name) => `${name} harms.`,
  differs: (name, reference) => `${name} differs from ${reference}; whether that is good is yours to say.`,
  alike: (name, reference) => `${name} makes no difference that matters against ${reference}.`,
  open: (name) => `${name}: not told yet.`,
  unknown: (name) => `${name}: too few burns.`,
}

/** Every variant but the reference over all metrics, the question first. */
export const verdictsOf = (
  metrics: readonly MetricComparison[],
  question: string | null,
  variants: readonly string[],
  burns: readonly { readonly variant: string }[],
): readonly VariantVerdict[] => {
  const [reference = '', ...others] = variants
  return others.map((variant): VariantVerdict => {
    const found = metrics.flatMap((metric) => {
      const contrast = contrastIn(metric, variant, reference)
      return contrast === undefined ? [] : [{ metric: metric.metric, contrast }]
    })
    const asked = found.find(({ metric }) => metric.id === question)?.contrast
    const verdict = asked?.verdict ?? 'unknown'
    const named = (which: Verdict): readonly string[] =>
      found
        .filter(({ metric, contrast }) => contrast.verdict === which && metric.id !== question)
        .map(({ metric }) => (metric.phase === 'simmer' ? `${metric.name}, simmering` : metric.name))
    const sentence = asked?.sentence ?? 'It has no burn with the metric that was asked about.'
    return {
      variant,
      burns: burns.filter((burn) => burn.variant === variant).length,
      verdict,
      better: named('better'),
      worse: named('worse'),
      sentence: `${HEADLINE[verdict](`“${variant}”`, `“${reference}”`)} ${sentence}`,
    }
  })
}
