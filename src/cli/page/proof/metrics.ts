import { labelled, wrap } from '#compose/page/text.ts'
import { amountText } from '#proof/compare/amount.ts'
import { trialCautions } from '#proof/metrics/cautions.ts'
import { COVERAGE, DOUBT_SENTENCE, valueAndDoubt } from '#proof/metrics/doubt.ts'
import { type PhaseMetrics, PROVENANCE, type TrialMetrics, type Worked } from '#proof/metrics/worked.ts'
import { type Trial, variantOf } from '#proof/trial/model.ts'

const PHASES = { 'high power': 'Full power', simmer: 'Simmering' } as const

/** `21.4 % ± 1.6 %`. */
const valueText = (row: Pick<Worked, 'key' | 'unit' | 'value' | 'u'>): string =>
  valueAndDoubt(row)
    .filter((text) => text !== null)
    .join(' ')

const percent = (share: number): string => `${Math.round(100 * share)} %`

const doubtText = ({ contributions }: Worked): string | null => {
  const most = contributions.filter(({ share }) => share >= 0.1).slice(0, 3)
  return most.length === 0
    ? null
    : `its doubt comes from: ${most.map(({ name, share }) => `${name} ${percent(share)}`).join(', ')}`
}

/** As in the formula below it that asks for it. */
const sixFigures = (value: number): string => String(Number(value.toPrecision(6))).replace(/^-/, '−')

/** How one result came about: in symbols, with numbers, and what it came to. */
const workings = (row: Worked, width: number): string =>
  [
    wrap(`${row.name}`, width, '  ', '    '),
    wrap(`${row.symbol} = ${row.formula}`, width, '    ', '      '),
    wrap(`= ${row.numbers} = ${sixFigures(row.value)}`, width, '    ', '      '),
    wrap(`${valueText(row)}`, width, '    ', '      '),
    ...[row.note, doubtText(row)].flatMap((one) =>
      one === null ? [] : [wrap(one, width, '    ', '      ')],
    ),
  ].join('\n')

const phaseBlocks = (phase: PhaseMetrics, width: number): readonly (string | null)[] => [
  [
    PHASES[phase.phase],
    labelled(
      phase.rows
        .filter(({ metric }) => metric)
        .map((row) => [row.symbol, `${row.name}: ${valueText(row)}`] as const),
      width,
    ),
  ].join('\n'),
  phase.missing.length === 0
    ? null
    : [
        'Not to be had',
        labelled(
          phase.missing.map(({ name, reason }) => [name, reason] as const),
          width,
        ),
      ].join('\n'),
  dryFuelBlock(phase, width),
]

/** The two forms of the dry-fuel equivalent beside each other. */
const dryFuelBlock = ({ rows }: PhaseMetrics, width: number): string | null => {
  const row = (key: string) => rows.find((one) => one.key === key)
  const [energy, fixed, gap] = [row('dryFuel'), row('dryFuelFixed'), row('dryFuelGap')]
  if (energy === undefined || fixed === undefined || gap === undefined) return null
  const share = energy.value === 0 ? '' : ` (${percent(Math.abs(gap.value / energy.value))})`
  const way = gap.value < 0 ? 'less' : 'more'
  return wrap(
    `Dry-fuel equivalent: ${valueText(energy)} by the energy form, on which all that follows rests; the older form with its fixed factors says ${valueText(fixed)}, ${amountText(gap, Math.abs(gap.value), COVERAGE * gap.u)}${share} ${way}.`,
    width,
  )
}

const headOf = (trial: Trial): string =>
  [
    `${trial.name}: ${trial.stove.name}`,
    ...(trial.stove.variant === undefined ? [] : [`“${variantOf(trial)}”`]),
    trial.day,
    `${trial.start} start`,
    ...(trial.place === undefined ? [] : [`burn ${trial.place} of its series`]),
  ].join(', ')

const workingsBlock = (metrics: TrialMetrics, width: number): string =>
  [
    'How this was worked out (g, min, °C, kJ/kg, as the protocol has them)',
    ...metrics.phases.flatMap(({ phase, rows }) => [
      ...(metrics.phases.length > 1 ? [PHASES[phase]] : []),
      ...rows.map((row) => workings(row, width)),
    ]),
    ...(metrics.turndown === null ? [] : [workings(metrics.turndown, width)]),
  ].join('\n')

/** One trial: metrics with their uncertainty, and how each was worked out. */
export const metricsBlocks = (
  trial: Trial,
  metrics: TrialMetrics,
  worked: boolean,
  width: number,
): readonly (string | null)[] => {
  const cautions = trialCautions(trial, metrics)
  return [
    wrap(headOf(trial), width),
    ...metrics.phases.flatMap((phase) => phaseBlocks(phase, width)),
    metrics.turndown === null
      ? null
      : wrap(`Turndown: ${valueText(metrics.turndown)}. ${metrics.turndown.note ?? ''}`, width),
    cautions.length === 0
      ? null
      : ['To bear in mind', ...cautions.map((one) => wrap(one, width, '  ', '    '))].join('\n'),
    worked ? workingsBlock(metrics, width) : null,
  ]
}

/** To go under every page of metrics. */
export const metricsFoot = (width: number): string => wrap(`${PROVENANCE} ${DOUBT_SENTENCE}`, width)
