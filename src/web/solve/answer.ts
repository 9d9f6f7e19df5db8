import { BadInput, orThrow, problemSentence } from '#basis/problem.ts'
import { setupIn } from '#compose/conditions.ts'
import { burnBandSteps } from '#science/answers/burn/bands.ts'
import { reportOf } from '#science/answers/burn/report.ts'
import type { BurnSetup } from '#science/answers/burn/setup.ts'
import { type LiveOutcome, liveBurn } from '#science/answers/live/liveBurn.ts'
import { fire } from '#science/answers/run.ts'
import { turndown } from '#science/answers/turndown.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { predictSteady } from '#science/steady/predict.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStoveValue } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import type { Answered, Answers, Ask, BandsAnswer, Given, LiveAnswer, TurndownAnswer } from './ask.ts'
import { stepAt, stepHalfway } from './stepAt.ts'

const stoveOf = (given: Given): Stove =>
  'format' in given ? orThrow(readStoveValue(given as unknown as JsonValue)).stove : given

const asked = ({ stove, conditions }: Ask): BurnSetup => orThrow(setupIn(stoveOf(stove), conditions))

const turndownOf = ({ stove, site, moisture, burntOff }: BurnSetup): TurndownAnswer => {
  const laid = orThrow(fire(stove, { site, moisture, burntOff }))
  return laid.kind === 'firing' ? turndown(stove, laid.firing, site, medianCoefficients) : null
}

/** Burns the median once for the length of the curve, then as many sets as asked; yields the share done. */
export function* bandsOf(ask: Extract<Ask, { kind: 'bands' }>): Generator<number, BandsAnswer> {
  const setup = asked(ask)
  const median = liveBurn(setup)
  if (median.kind === 'no burn') return null
  const last = median.burn.steps.at(-1)
  const until = last === undefined ? 0 : last.time + last.duration
  return yield* burnBandSteps(setup, ask.samples, until)
}

/** The moment of a burn at a time, or with the front half way down. */
const momentOf = (outcome: LiveOutcome, at: number | null): LiveAnswer => {
  if (outcome.kind === 'no burn') return outcome
  const { burn, moments } = outcome
  const step = at === null ? stepHalfway(burn.steps) : stepAt(burn.steps, at)
  const moment = moments[step]
  const held = burn.steps[step]
  if (moment === undefined || held === undefined) throw new Error('A burn without a step')
  const middle = held.time + held.duration / 2
  return { kind: 'burn', burn, at: at ?? middle, step, moment }
}

/** Remembers the last burn, so that whoever looks through it does not burn it anew. */
export const createLive = (): ((ask: Extract<Ask, { kind: 'live' }>) => LiveAnswer) => {
  let last: { readonly key: number; readonly outcome: LiveOutcome } | null = null
  return (ask) => {
    if (last?.key !== ask.key) last = { key: ask.key, outcome: liveBurn(asked(ask)) }
    return momentOf(last.outcome, ask.at)
  }
}

/** Answers at once what is quick to answer. */
export const quickAnswer = (ask: Exclude<Ask, { kind: 'bands' | 'live' }>): Answers[typeof ask.kind] => {
  const setup = asked(ask)
  const { stove, site, moisture, burntOff } = setup
  switch (ask.kind) {
    case 'steady':
      return orThrow(predictSteady(stove, { site, burntOff, ...(moisture === null ? {} : { moisture }) }))
    case 'burn':
      return reportOf(setup, 0)
    case 'turndown':
      return turndownOf(setup)
  }
}

/** What a solve came to, in a sentence where what was given will not do. */
export const told = (work: () => Answers[Ask['kind']]): Answered<Answers[Ask['kind']]> => {
  try {
    return { ok: true, value: work() }
  } catch (error) {
    return failure(error)
  }
}

export const failure = (error: unknown): Extract<Answered<never>, { ok: false }> => {
  if (error instanceof BadInput)
    return { ok: false, sentence: error.problems.map(problemSentence).join(' '), problems: error.problems }
  const what = error instanceof Error ? error.message : String(error)
  return { ok: false, sentence: `The burn could not be worked out: ${what}.`, problems: [] }
}
