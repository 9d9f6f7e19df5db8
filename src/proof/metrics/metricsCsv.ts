import { formatCsv } from '#proof/trial/exchange/csv.ts'
import { type Trial, variantOf } from '#proof/trial/model.ts'
import { metricsOf, PROVENANCE } from './worked.ts'

const KNOWN = ['trial', 'stove', 'variant', 'day', 'block', 'fuel batch', 'place', 'start'] as const

/** Every row says what its figures are not: rows get parted from their file. */
const SAID = 'formulas'

/** As many figures as a reading ever has, and some to compute on with. */
const figures = (value: number): string => String(Number(value.toPrecision(8)))

/**
 * Metrics as a table of numbers, one burn a row, each with its standard uncertainty beside it: for a spreadsheet, not to be
 * read back.
 */
export const metricsCsv = (trials: readonly Trial[]): string => {
  const rows = trials.map((trial) => {
    const { phases, turndown } = metricsOf(trial)
    const cells = new Map<string, string>()
    const seen = new Set<string>()
    for (const { phase, rows: worked } of phases) {
      if (seen.has(phase)) continue
      seen.add(phase)
      for (const { metric, name, unit, value, u } of worked)
        if (metric) {
          cells.set(`${phase}: ${name} [${unit}]`, figures(value))
          cells.set(`${phase}: ${name}, u [${unit}]`, figures(u))
        }
    }
    if (turndown !== null) {
      cells.set(`${turndown.name} [1]`, figures(turndown.value))
      cells.set(`${turndown.name}, u [1]`, figures(turndown.u))
    }
    const { name, stove, day, block, fuel, place, start } = trial
    const known = [
      name,
      stove.name,
      variantOf(trial),
      day,
      block,
      fuel.batch ?? '',
      place?.toString() ?? '',
      start,
    ]
    return { known, cells }
  })
  const columns = [...new Set(rows.flatMap(({ cells }) => [...cells.keys()]))]
  return formatCsv([
    [...KNOWN, ...columns, SAID],
    ...rows.map(({ known, cells }) => [
      ...known,
      ...columns.map((column) => cells.get(column) ?? ''),
      PROVENANCE,
    ]),
  ])
}
