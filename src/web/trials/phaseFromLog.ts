import type { WeighingFile } from '#proof/trial/logSchema.ts'
import { type BurnLog, isWeighing, litAt, standing } from '../atStove/entry.ts'
import { at, changed, type Draft } from './draft.ts'

/** Within this of the start or the end of a phase a weighing belongs to it; a judgement [ms]. */
const NEAR = 90_000

/** A time as a trial file writes it [from ms]: `0 s`, `7 min 12 s`, `1 h 4 min 10 s`. */
export const writtenTime = (milliseconds: number): string => {
  const seconds = Math.round(milliseconds / 1000)
  const [h, min, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60]
  const parts = [
    ...(h > 0 ? [`${h} h`] : []),
    ...(h > 0 || min > 0 ? [`${min} min`] : []),
    ...(s > 0 || seconds === 0 ? [`${s} s`] : []),
  ]
  return parts.join(' ')
}

export interface Taken {
  readonly draft: Draft
  /** What was filled in and where it comes from; sentences. */
  readonly said: readonly string[]
}

/**
 * Fills the blanks of a phase from the log: its start is the first "pot on" (or lighting), its end "boil" (or "pot off",
 * "flame out"); weights are those nearest to its two ends. What was filled in by hand stays.
 */
export const phaseFromLog = (draft: Draft, index: number, log: BurnLog): Taken => {
  const lit = litAt(log)
  if (lit === null)
    return { draft, said: ['Nobody noted when it was lit: nothing can be taken from the log.'] }
  const entries = standing(log).map((entry) => ({ entry, time: Date.parse(entry.at) }))
  const moment = (kinds: readonly string[], from: number): { time: number; kind: string } | null => {
    for (const kind of kinds) {
      const found = entries.find(
        ({ entry, time }) => !isWeighing(entry) && entry.event === kind && time >= from,
      )
      if (found !== undefined) return { time: found.time, kind }
    }
    return null
  }
  const high = at(draft, ['phases', index, 'phase']) !== 'simmer'
  const boiled = moment(['boil'], lit)
  const start = high
    ? (moment(['pot on'], lit) ?? { time: lit, kind: 'lit' })
    : (boiled ?? { time: lit, kind: 'lit' })
  const end = moment(high ? ['boil', 'pot off', 'flame out'] : ['pot off', 'flame out'], start.time + 1)
  let next = draft
  const said: string[] = []
  const fill = (side: readonly string[], value: string, source: string): void => {
    const path = ['phases', index, ...side]
    if (at(next, path) !== undefined) return
    next = changed(next, path, value)
    said.push(`${value} ${source}.`)
  }
  fill(['from', 'at'], writtenTime(start.time - lit), `after lighting is the start, by “${start.kind}”`)
  if (end === null) said.push('Nothing in the log says when this phase ended.')
  else fill(['to', 'at'], writtenTime(end.time - lit), `after lighting is the end, by “${end.kind}”`)
  const weighed = (of: WeighingFile['of']) =>
    entries.flatMap(({ entry, time }) =>
      isWeighing(entry) && entry.of === of ? [{ mass: entry.mass, time }] : [],
    )
  for (const of of ['fuel', 'pot'] as const) {
    const all = weighed(of)
    const before = all.findLast(({ time }) => time <= start.time + NEAR)
    if (before !== undefined) {
      const empty = at(next, ['phases', index, 'from', of]) === undefined
      fill(['from', of], before.mass, `of ${of} at the start, weighed then`)
      if (of === 'fuel' && index === 0 && empty)
        next = changed(next, ['fuel', 'weighed'], before.time <= lit ? 'before lighting' : 'at the start')
      if (of === 'fuel' && before.time <= lit && start.time > lit)
        said.push(
          `That fuel was weighed before lighting: what burnt in the ${writtenTime(start.time - lit)} until “${start.kind}” counts as burnt in this phase.`,
        )
    }
    const after =
      end === null ? undefined : all.find(({ time }) => time >= end.time - NEAR && time > start.time + NEAR)
    if (after !== undefined) fill(['to', of], after.mass, `of ${of} at the end, weighed then`)
  }
  const [char] = end === null ? [] : weighed('char').filter(({ time }) => time >= end.time)
  if (char !== undefined) fill(['char'], char.mass, 'of char, weighed after the end')
  if (entries.some(({ entry }) => !isWeighing(entry) && entry.event === 'refuel'))
    said.push(
      'Fuel was put in on the way: add it to the weight at the start, which stands for all that was there to burn.',
    )
  return { draft: next, said }
}
