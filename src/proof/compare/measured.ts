import { evaluateTrial } from '#proof/metrics/evaluate.ts'
import { type Input, inputsOf } from '#proof/metrics/inputs.ts'
import { propagate } from '#proof/metrics/propagate.ts'
import { metricsOf } from '#proof/metrics/worked.ts'
import type { Trial } from '#proof/trial/model.ts'
import { metricId } from './comparedMetrics.ts'

/** One metric of one burn: its value and what moves it. */
export interface Measured {
  readonly value: number
  readonly u: number
  /** By how much one standard uncertainty moves it, with its sign: of what the burn has to itself, and of what it shares. */
  readonly own: readonly number[]
  /** By what is shared: instrument, fuel. The same key in two burns is the same error. */
  readonly shared: ReadonlyMap<string, number>
}

export interface MeasuredTrial {
  readonly metrics: ReadonlyMap<string, Measured>
  /** Why a metric cannot be had, by its id. */
  readonly missing: ReadonlyMap<string, string>
}

/**
 * What two burns share, and so get wrong alike: an instrument that is off by so much, a heating value looked up once, the
 * pot weighed once. Two burns share it where the stated uncertainty is the same and, for a thing weighed or looked up,
 * the figure too. Null: a reading of this burn alone.
 */
const sharedKey = ({ id, value, u }: Input): string | null => {
  switch (id) {
    case 'scaleGain':
    case 'thermometerOffset':
    case 'meter':
      return `${id} ${u}`
    case 'L':
    case 'Lc':
    case 'P':
    case 'before':
    case 'after':
      return `${id} ${value} ${u}`
    default:
      return null
  }
}

/** All metrics of a trial by their id; of two phases of one kind the first counts, as for the turndown. */
export const measuredTrial = (trial: Trial): MeasuredTrial => {
  const inputs = inputsOf(trial)
  const keys = new Map(inputs.map((input) => [input.id, sharedKey(input)]))
  const results = propagate(inputs, (readings) => evaluateTrial(trial, readings))
  const first = (phase: string): number => trial.phases.findIndex((one) => one.phase === phase)
  const metrics = new Map<string, Measured>()
  for (const [id, { value, u, effects }] of results) {
    if (!Number.isFinite(value) || !Number.isFinite(u)) continue
    const dot = id.indexOf('.')
    const index = Number(id.slice(0, dot))
    const phase = dot < 0 ? null : (trial.phases[index]?.phase ?? null)
    if (phase !== null && first(phase) !== index) continue
    const own: number[] = []
    const shared = new Map<string, number>()
    for (const [input, change] of effects) {
      const key = keys.get(input) ?? null
      if (key === null) own.push(change)
      else shared.set(key, change)
    }
    metrics.set(metricId(phase, dot < 0 ? id : id.slice(dot + 1)), { value, u, own, shared })
  }
  const missing = new Map<string, string>()
  for (const { phase, missing: lacking } of metricsOf(trial).phases)
    for (const { key, reason } of lacking)
      if (!missing.has(metricId(phase, key))) missing.set(metricId(phase, key), reason)
  return { metrics, missing }
}
