import type { Trial, TrialPhase } from '#proof/trial/model.ts'
import { evaluateTrial, formulasOf } from './evaluate.ts'
import { TERMS, type Term, TURNDOWN, type Unit } from './formulas.ts'
import { inputsOf } from './inputs.ts'
import { type Contribution, propagate } from './propagate.ts'

/** One result and how it was worked out. Numbers in the units of the protocol. */
export interface Worked {
  readonly key: string
  /** As the protocol writes it. */
  readonly symbol: string
  readonly name: string
  readonly unit: Unit
  readonly metric: boolean
  readonly value: number
  /** Standard uncertainty. */
  readonly u: number
  /** In symbols. */
  readonly formula: string
  /** The same with numbers in it. */
  readonly numbers: string
  /** Where its uncertainty comes from, the largest first. */
  readonly contributions: readonly Contribution[]
  readonly note: string | null
}

/** A result that cannot be had, and why. */
export interface NotHad {
  readonly key: string
  readonly name: string
  readonly reason: string
}

export interface PhaseMetrics {
  readonly phase: TrialPhase['phase']
  readonly terms: readonly (Term & { readonly value: number; readonly u: number })[]
  readonly rows: readonly Worked[]
  readonly missing: readonly NotHad[]
}

export interface TrialMetrics {
  readonly phases: readonly PhaseMetrics[]
  readonly turndown: Worked | null
}

/** To go with every page of metrics. */
export const PROVENANCE =
  'Formulas after the water-boiling protocol (WBT 4.2) and ISO 19867-1, written from memory: no conformity is claimed, and no performance tier follows from a garage test.'

/** Six digits: as many as a reading ever has, and enough to follow the sum. */
const inFormula = (value: number): string => {
  const text = String(Number(value.toPrecision(6)))
  return value < 0 ? `(−${text.slice(1)})` : text
}

const REASONS: Readonly<Record<string, string>> = {
  c: 'the char was not weighed',
  tb: 'nobody noted when it boiled',
}

const reasonOf = (key: string, missing: ReadonlyMap<string, string>): string =>
  REASONS[key] ?? missing.get(key) ?? 'a reading is missing'

const letter = (trial: Trial, phase: TrialPhase): string =>
  phase.phase === 'simmer' ? 's' : trial.start === 'hot' ? 'h' : 'c'

/** Every metric of a trial with its uncertainty and its way there. */
export const metricsOf = (trial: Trial): TrialMetrics => {
  const results = propagate(inputsOf(trial), (readings) => evaluateTrial(trial, readings))
  const phases = trial.phases.map((phase, i): PhaseMetrics => {
    const at = (key: string) => results.get(`${i}.${key}`)
    const written = (text: string): string => text.replaceAll('#', letter(trial, phase))
    const formulas = formulasOf(phase.phase)
    const symbols = new Map([...TERMS, ...formulas].map(({ key, symbol }) => [key, written(symbol)]))
    const missing = new Map<string, string>()
    const rows: Worked[] = []
    const notHad: NotHad[] = []
    for (const { key, symbol, name, unit, formula, metric, note } of formulas) {
      const found = at(key)
      if (found === undefined || !Number.isFinite(found.value)) {
        const lacking = formula.keys.find((one) => at(one) === undefined)
        const reason = lacking === undefined ? 'it would divide by nothing' : reasonOf(lacking, missing)
        missing.set(key, reason)
        if (metric) notHad.push({ key, name, reason })
        continue
      }
      rows.push({
        key,
        symbol: written(symbol),
        name,
        unit,
        metric,
        value: found.value,
        u: found.u,
        formula: formula.told((one) => symbols.get(one) ?? one),
        numbers: formula.told((one) => inFormula(at(one)?.value ?? Number.NaN)),
        contributions: found.contributions,
        note: note === undefined ? null : written(note),
      })
    }
    return {
      phase: phase.phase,
      terms: TERMS.flatMap((one) => {
        const found = at(one.key)
        return found === undefined
          ? []
          : [{ ...one, symbol: written(one.symbol), value: found.value, u: found.u }]
      }),
      rows,
      missing: notHad,
    }
  })
  return { phases, turndown: turndownOf(results, phases) }
}

const turndownOf = (
  results: ReturnType<typeof propagate>,
  phases: readonly PhaseMetrics[],
): Worked | null => {
  const found = results.get('turndown')
  const power = (kind: PhaseMetrics['phase']) =>
    phases.find(({ phase }) => phase === kind)?.rows.find(({ key }) => key === 'firepower')
  const [high, low] = [power('high power'), power('simmer')]
  if (found === undefined || high === undefined || low === undefined || !Number.isFinite(found.value))
    return null
  return {
    ...TURNDOWN,
    metric: true,
    value: found.value,
    u: found.u,
    formula: `${high.symbol} / ${low.symbol}`,
    numbers: `${inFormula(high.value)} / ${inFormula(low.value)}`,
    contributions: found.contributions,
    note: 'Of two phases that were burnt, not of what the damper could do.',
  }
}
