import type { Trial } from '#proof/trial/model.ts'
import { FORMULAS, type Formula } from './formulas.ts'

/** Weighed with the one scale, and read from the one thermometer. */
const MASSES = new Set(['fi', 'ff', 'c', 'P', 'Pi', 'Pf'])
const TEMPERATURES = new Set(['Ti', 'Tf', 'Ta', 'Tb'])

/** Value by key; a key that cannot be worked out is not there. */
export type Values = ReadonlyMap<string, number>

/** Formulas of a kind of phase, in order. */
export const formulasOf = (phase: Formula['phases'][number]): readonly Formula[] =>
  FORMULAS.filter(({ phases }) => phases.includes(phase))

const termsOf = (readings: ReadonlyMap<string, number>, phase: number): Map<string, number> => {
  const gain = 1 + (readings.get('scaleGain') ?? 0)
  const offset = readings.get('thermometerOffset') ?? 0
  const values = new Map<string, number>()
  for (const [id, value] of readings) {
    const dot = id.indexOf('.')
    if (dot >= 0 && id.slice(0, dot) !== String(phase)) continue
    const key = id.slice(dot + 1)
    values.set(key, MASSES.has(key) ? value / gain : TEMPERATURES.has(key) ? value - offset : value)
  }
  // From the barometer: the thermometer's error is not in it.
  const steam = values.get('pressure')
  if (steam !== undefined) values.set('Tb', steam)
  const [before, after] = [values.get('before'), values.get('after')]
  const meter = values.get('meter')
  if (meter !== undefined) values.set('m', meter)
  // A ratio: the error of the scale falls out of it.
  else if (before !== undefined && after !== undefined) values.set('m', (before - after) / before)
  return values
}

/** All that can be worked out of one phase from the readings by their id, in the units of the formulas. */
export const evaluatePhase = (
  readings: ReadonlyMap<string, number>,
  kind: Formula['phases'][number],
  phase: number,
): Values => {
  const values = termsOf(readings, phase)
  for (const { key, formula } of formulasOf(kind))
    if (formula.keys.every((one) => values.has(one)))
      values.set(
        key,
        formula.value((one) => values.get(one) as number),
      )
  return values
}

/** Every phase, its keys after its number and a dot, and the turndown where there is one. */
export const evaluateTrial = (trial: Trial, readings: ReadonlyMap<string, number>): Values => {
  const all = new Map<string, number>()
  const power = new Map<string, number>()
  for (const [i, { phase }] of trial.phases.entries()) {
    const values = evaluatePhase(readings, phase, i)
    for (const [key, value] of values) all.set(`${i}.${key}`, value)
    const firepower = values.get('firepower')
    if (firepower !== undefined && !power.has(phase)) power.set(phase, firepower)
  }
  const [high, low] = [power.get('high power'), power.get('simmer')]
  if (high !== undefined && low !== undefined) all.set('turndown', high / low)
  return all
}
