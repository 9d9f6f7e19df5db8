import { FORMULAS, TURNDOWN } from '#proof/metrics/formulas.ts'
import type { PhaseKind } from '#proof/trial/schema.ts'
import type { ComparedMetric, Wanted } from './model.ts'

/** What a maker wants of each metric. Whether a strong fire or much char is good depends on what it is for. */
const WANTED: Readonly<Record<string, Wanted>> = {
  timeToBoil: 'less',
  timeToBoilT: 'less',
  efficiencyNoChar: 'more',
  efficiency: 'more',
  usefulPower: 'more',
  specificFuel: 'less',
  specificFuelT: 'less',
  specificEnergyT: 'less',
  turndown: 'more',
}

const PHASES: readonly PhaseKind[] = ['high power', 'simmer']

/** Id of a metric in the results of a comparison. */
export const metricId = (phase: PhaseKind | null, key: string): string =>
  phase === null ? key : `${phase}/${key}`

/** Everything that variants are compared by, in the order of the protocol. */
export const COMPARED_METRICS: readonly ComparedMetric[] = [
  ...PHASES.flatMap((phase) =>
    FORMULAS.filter(({ metric, phases }) => metric && phases.includes(phase)).map(
      ({ key, symbol, name, unit }): ComparedMetric => ({
        id: metricId(phase, key),
        key,
        phase,
        name,
        symbol,
        unit,
        wanted: WANTED[key] ?? 'neither',
      }),
    ),
  ),
  {
    id: TURNDOWN.key,
    key: TURNDOWN.key,
    phase: null,
    name: TURNDOWN.name,
    symbol: TURNDOWN.symbol,
    unit: TURNDOWN.unit,
    wanted: WANTED[TURNDOWN.key] ?? 'neither',
  },
]

/** What a comparison is about unless it is told: the first of these that all variants have. */
export const QUESTIONS: readonly string[] = [
  'high power/timeToBoilT',
  'high power/efficiency',
  'high power/efficiencyNoChar',
  'simmer/specificFuel',
  'simmer/efficiencyNoChar',
]
