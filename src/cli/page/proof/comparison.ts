import { columns, labelled, wrap } from '#compose/page/text.ts'
import { amountText, differenceText, rangeText, spanText } from '#proof/compare/amount.ts'
import type {
  Comparison,
  Contrast,
  Measurement,
  MetricComparison,
  VariantFigures,
  VariantVerdict,
} from '#proof/compare/model.ts'
import { inCustomary, metricPart } from './inOne.ts'

const VERDICTS: Readonly<Record<Contrast['verdict'], string>> = {
  better: 'better',
  worse: 'worse',
  differs: 'differs',
  alike: 'alike',
  open: 'not told',
  unknown: 'unknown',
}

const numbered = (verdicts: Comparison['variants']): ReadonlyMap<string, string> =>
  new Map(verdicts.map(({ variant }, i) => [variant, String(i + 1)]))

const contrastOf = ({ contrasts }: MetricComparison, { variant }: VariantVerdict, reference: string) =>
  contrasts.find((one) => one.variant === variant && one.against === reference)

const LONGEST = 26

/** A name that may be a sentence, in a column. */
const short = (name: string): string => (name.length <= LONGEST ? name : `${name.slice(0, LONGEST - 1)}…`)

/** What a maker should take from it, variant by variant. */
const verdictBlock = (comparison: Comparison, main: MetricComparison, width: number): string =>
  comparison.verdicts
    .map((verdict) => {
      const contrast = contrastOf(main, verdict, comparison.reference)
      return [
        wrap(verdict.sentence, width, '', '  '),
        ...(contrast?.moreSentence == null ? [] : [wrap(contrast.moreSentence, width, '  → ', '    ')]),
        ...(verdict.better.length === 0
          ? []
          : [wrap(`Better besides: ${verdict.better.join('; ')}.`, width, '  ', '    ')]),
        ...(verdict.worse.length === 0
          ? []
          : [wrap(`Worse besides: ${verdict.worse.join('; ')}.`, width, '  ', '    ')]),
      ].join('\n')
    })
    .join('\n')

const halfOf = ({ interval, measurement }: VariantFigures): number =>
  interval === null
    ? Math.hypot(measurement.readings, measurement.shared)
    : (interval.high - interval.low) / 2

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0

/** Without any unit, for the narrow cells of single burns. */
const bare = (text: string): string => metricPart(text).replace(/ [^ ]+$/, '')

const burnsTable = ({ metric, variants }: MetricComparison, numbers: ReadonlyMap<string, string>): string => {
  // One step for the whole column, so that means can be compared by eye.
  const half = middle(variants.map(halfOf))
  const rows = variants.map((one) => [
    numbers.get(one.variant) ?? '',
    short(one.variant),
    amountText(metric, one.mean, half),
    one.sd === null ? '' : differenceText(metric, one.sd, half / 3),
    one.interval === null ? 'one burn' : rangeText(metric, one.interval.low, one.interval.high, half),
  ])
  const customary = inCustomary(rows, [2, 3, 4])
  const table = (all: readonly (readonly string[])[]): string =>
    columns(
      [['', '', 'mean', 'spread', '95 % of the mean'], ...all],
      ['right', 'left', 'right', 'right', 'right'],
    )
  return [
    table(rows.map((cells) => cells.map((cell, i) => (i < 2 ? cell : metricPart(cell))))),
    ...(customary === null ? [] : [table(customary)]),
  ].join('\n')
}

/** Every burn, in the order of value, so that nothing hides behind a mean. */
const pointsBlock = ({ metric, variants }: MetricComparison, width: number): string => {
  const spread = middle(variants.flatMap(({ sd }) => sd ?? []))
  return [
    'Every burn',
    labelled(
      variants.map(({ variant, points }) => [
        short(variant),
        [...points]
          .sort((a, b) => a.value - b.value)
          .map(({ value, mishap }) => `${bare(amountText(metric, value, spread))}${mishap ? '*' : ''}`)
          .join('  '),
      ]),
      width,
    ),
    ...(variants.some(({ points }) => points.some(({ mishap }) => mishap))
      ? [wrap('* Something went wrong in this burn.', width, '  ')]
      : []),
  ].join('\n')
}

const pairsTable = ({ metric, contrasts }: MetricComparison, numbers: ReadonlyMap<string, string>): string =>
  columns(
    [
      ['pair', 'difference', 'most likely', '', 'p'],
      ...contrasts.map(({ variant, against, difference, verdict }) => {
        const pair = `${numbers.get(variant)} − ${numbers.get(against)}`
        if (difference === null) return [pair, '', '', VERDICTS[verdict], '']
        const { value, low, high, p } = difference
        const half = (high - low) / 2
        return [
          pair,
          metricPart(differenceText(metric, value, half)),
          metricPart(spanText(metric, low, high, ' to ', half)),
          VERDICTS[verdict],
          p < 0.001 ? '< 0.001' : p.toFixed(3),
        ]
      }),
    ],
    ['left', 'right', 'right', 'left', 'right'],
  )

const measurementText = (comparison: MetricComparison): string => {
  const { metric, variants, contrasts } = comparison
  const most = (
    of: (one: Measurement) => number,
    all: readonly { readonly measurement: Measurement }[],
  ): number => Math.max(0, ...all.map(({ measurement }) => of(measurement)))
  const said = (value: number): string =>
    value < 1e-9 * Math.max(...variants.map(({ mean }) => Math.abs(mean)))
      ? 'nothing'
      : differenceText(metric, value, value)
  return `Uncertainty of measurement, one standard deviation: a mean is off by up to ${said(most(({ readings }) => readings, variants))} for the readings of its burns, which the spread shows already, and by up to ${said(most(({ shared }) => shared, variants))} for scale, thermometer and heating values that all burns share; of that, up to ${said(most(({ shared }) => shared, contrasts))} stays in a difference.`
}

const warningsBlock = ({ warnings }: Comparison, width: number): string | null =>
  warnings.length === 0
    ? null
    : [
        'What may mislead',
        ...warnings.map(({ sentence, fix }) =>
          [wrap(sentence, width, '  ', '    '), wrap(fix, width, '    → ', '      ')].join('\n'),
        ),
      ].join('\n')

const otherBlock = (
  { metrics, question, reference }: Comparison,
  width: number,
): readonly (string | null)[] =>
  metrics
    .filter(({ metric }) => metric.id !== question)
    .map(({ metric, contrasts, method, notes, drift }) =>
      [
        wrap(`${metric.name}${metric.phase === 'simmer' ? ', simmering' : ''} (${method.name})`, width),
        ...contrasts
          .filter(({ against }) => against === reference)
          .map(({ sentence }) => wrap(sentence, width, '  ', '    ')),
        ...[...notes, ...(drift?.sentence == null ? [] : [drift.sentence])].map((note) =>
          wrap(note, width, '  · ', '    '),
        ),
      ].join('\n'),
    )

/** Variants compared, the question first. `all`: every other metric as well. */
export const comparisonBlocks = (
  comparison: Comparison,
  all: boolean,
  width: number,
): readonly (string | null)[] => {
  const main = comparison.metrics.find(({ metric }) => metric.id === comparison.question)
  const burns = comparison.variants.reduce((sum, one) => sum + one.burns, 0)
  const head = wrap(
    `${comparison.variants.length} variants, ${burns} burns, held against “${comparison.reference}”${main === undefined ? '' : `, asked about: ${main.metric.name}`}`,
    width,
  )
  if (main === undefined)
    return [head, wrap('No metric is there for two variants: nothing can be compared.', width)]
  const numbers = numbered(comparison.variants)
  return [
    head,
    verdictBlock(comparison, main, width),
    [wrap(`${main.metric.name}, each variant by itself`, width), burnsTable(main, numbers)].join('\n'),
    pointsBlock(main, width),
    [
      wrap(`Pair by pair (${main.method.name})`, width),
      pairsTable(main, numbers),
      wrap(main.method.reason, width, '  ', '  '),
    ].join('\n'),
    wrap(measurementText(main), width),
    main.notes.length === 0 ? null : main.notes.map((note) => wrap(note, width)).join('\n'),
    warningsBlock(comparison, width),
    ...(all ? otherBlock(comparison, width) : []),
    comparison.leftOut.length === 0
      ? null
      : wrap(
          `Left out: ${comparison.leftOut.map(({ trial, reason }) => `“${trial}” (${reason})`).join('; ')}.`,
          width,
        ),
    comparison.provenance.map((line) => wrap(line, width)).join('\n'),
  ]
}
