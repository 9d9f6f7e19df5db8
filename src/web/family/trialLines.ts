import { formatQuantity } from '#basis/text/format.ts'
import { measuredTrial } from '#proof/compare/measured.ts'
import type { KnownTrial } from '../trials/allTrials.ts'

/** The formulas tell times in minutes [s] */
const MINUTE = 60

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length

/** Of a revision's own trials: how many, and what they said, in lines. */
export const trialLines = (trials: readonly KnownTrial[]): readonly string[] => {
  if (trials.length === 0) return []
  const count = `${trials.length} ${trials.length === 1 ? 'trial' : 'trials'}`
  const measured = trials.flatMap(({ soFar: { trial } }) => (trial === null ? [] : [measuredTrial(trial)]))
  const of = (id: string): readonly number[] =>
    measured.flatMap(({ metrics }) => {
      const found = metrics.get(id)
      return found === undefined ? [] : [found.value]
    })
  const boils = of('high power/timeToBoil')
  const shares = of('high power/efficiency')
  const said = [
    boils.length === 0
      ? null
      : `boiled in ${formatQuantity(MINUTE * mean(boils), 'burnTime')}${boils.length > 1 ? ' on average' : ''}`,
    shares.length === 0 ? null : `${(100 * mean(shares)).toFixed(0)} % of the heat in the water`,
  ].filter((part) => part !== null)
  return [said.length === 0 ? `${count}, not evaluated yet` : `${count}: ${said.join(', ')}`]
}
