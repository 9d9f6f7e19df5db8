import type { LiveBurn } from '#science/answers/live/liveBurn.ts'
import type { Turndown } from '#science/answers/turndown.ts'
import type { Moment } from '#science/steady/prediction.ts'
import type { Stove } from '#stove/model.ts'
import { type Cell, createCell, type OpenCell } from '../cell/cell.ts'
import type { Answered, BandsAnswer, Given, LiveAnswer } from '../solve/ask.ts'
import type { Conditions } from '../solve/conditions.ts'
import { createLatest } from '../solve/latest.ts'
import { solver } from '../solve/solver.ts'
import type { Parent, StoveState } from './editor.ts'

/** A stove together with what is known of its burn: the two are drawn as one. */
export interface Live {
  /** Grows with every other stove or condition. */
  readonly key: number
  readonly stove: Stove
  readonly conditions: Conditions
  /** Null while it is worked out for the first time, or where there is no burn. */
  readonly burn: LiveBurn | null
  readonly moment: Moment | null
  /** Time of the moment [s], and the step that holds there. */
  readonly at: number
  readonly step: number
  /** Why there is no burn, in a sentence. */
  readonly sentence: string | null
}

export interface Bands {
  readonly key: number
  /** Null while they are drawn. */
  readonly answer: BandsAnswer
  readonly done: number
  readonly of: number
  readonly state: 'waiting' | 'drawing' | 'there' | 'stopped'
}

/** What of the parent is set beside the stove. */
export interface Before {
  readonly name: string
  readonly stove: Stove
  readonly burn: LiveBurn | null
  readonly moment: Moment | null
}

/** The answers of one stove on the bench. */
export interface LiveStove {
  readonly live: Cell<Live | null>
  /** Time that is looked at; null: with the front half way down [s]. */
  readonly at: OpenCell<number | null>
  readonly bands: Cell<Bands | null>
  readonly turndown: Cell<Turndown | null>
  readonly before: Cell<Before | null>
  readonly stopBands: () => void
  readonly drawBands: () => void
  /** Begins to follow stove and conditions; gives back how to stop. */
  readonly follow: () => () => void
}

/** A hand that pauses this long has come to rest: what takes seconds may begin [ms]. */
const REST = 700

interface Question {
  readonly key: number
  /** What travels to the worker: a file is a few kilobytes of words, a stove that was read three times that. */
  readonly given: Given
  readonly stove: Stove
  readonly conditions: Conditions
  readonly at: number | null
}

const liveOf = (
  { key, stove, conditions, at }: Question,
  answer: Answered<LiveAnswer>,
  last: Live | null,
): Live => {
  const bare = { key, stove, conditions, burn: null, moment: null, at: at ?? 0, step: 0 }
  if (!answer.ok) return { ...bare, sentence: answer.sentence }
  const { value } = answer
  if (value.kind === 'no burn') return { ...bare, sentence: value.noBurn.sentence }
  // Looked through at another time it is the same burn: whoever draws its curve need not draw it anew.
  const burn = last !== null && last.key === key && last.burn !== null ? last.burn : value.burn
  return {
    key,
    stove,
    conditions,
    burn,
    moment: value.moment,
    at: value.at,
    step: value.step,
    sentence: null,
  }
}

/** Follows a stove and its conditions with the burn that belongs to them. */
export const createLiveStove = (
  document: string,
  state: Cell<StoveState>,
  parent: Cell<Parent | null>,
  conditions: Cell<Conditions>,
): LiveStove => {
  const live = createCell<Live | null>(null)
  const at = createCell<number | null>(null)
  const bands = createCell<Bands | null>(null)
  const turndown = createCell<Turndown | null>(null)
  const before = createCell<Before | null>(null)
  let key = 0
  let rest: ReturnType<typeof setTimeout> | null = null
  let drawing: AbortController | null = null

  const ask = createLatest<Question, Answered<LiveAnswer>>(
    (question) => solver.live(question.given, question.conditions, question.key, question.at),
    (answer, question) => live.set(liveOf(question, answer, live.get())),
  )
  const given = (): Given => {
    const { file, stove, problems } = state.get()
    return problems.length === 0 ? file : stove
  }
  const question = (): Question => ({
    key,
    given: given(),
    stove: state.get().stove,
    conditions: conditions.get(),
    at: at.get(),
  })

  const stopBands = (): void => {
    drawing?.abort()
    drawing = null
    const now = bands.get()
    if (now?.state === 'drawing') bands.set({ ...now, state: 'stopped' })
  }

  const drawBands = (): void => {
    stopBands()
    const { given: stove, conditions: under } = question()
    const mine = key
    const stop = new AbortController()
    drawing = stop
    bands.set({ key: mine, answer: null, done: 0, of: 1, state: 'drawing' })
    void solver.turndown(stove, under).then((answer) => {
      if (mine === key) turndown.set(answer.ok ? answer.value : null)
    })
    solver
      .bands(stove, under, {
        signal: stop.signal,
        onProgress: (done, of) => {
          if (mine === key) bands.set({ key: mine, answer: null, done, of, state: 'drawing' })
        },
      })
      .then((answer) => {
        if (mine !== key) return
        drawing = null
        bands.set({ key: mine, answer: answer.ok ? answer.value : null, done: 1, of: 1, state: 'there' })
      })
      .catch(() => undefined)
  }

  const rested = (): void => {
    if (rest !== null) clearTimeout(rest)
    rest = setTimeout(() => {
      rest = null
      if (state.get().moving) return rested()
      drawBands()
    }, REST)
  }

  const changed = (): void => {
    key += 1
    stopBands()
    if (bands.get() !== null) bands.set(null)
    ask(question())
    rested()
  }

  const askBefore = (): void => {
    const from = parent.get()
    if (from === null) {
      before.set(null)
      return
    }
    const under = conditions.get()
    // Keys below nothing are the parent's: they never meet those of the stove.
    void solver.live(from.stove, under, -1 - key, null).then((answer) => {
      if (parent.get() !== from || conditions.get() !== under) return
      const value = answer.ok ? answer.value : null
      const burnt = value?.kind === 'burn' ? value : null
      before.set({
        // A stove that was edited since stands before its own last revision.
        name: from.document === document ? 'its last revision' : from.name,
        stove: from.stove,
        burn: burnt?.burn ?? null,
        moment: burnt?.moment ?? null,
      })
    })
  }

  const follow = (): (() => void) => {
    let stove = state.get().stove
    const stops = [
      state.subscribe(() => {
        const next = state.get().stove
        if (next === stove) return
        stove = next
        changed()
      }),
      conditions.subscribe(() => {
        changed()
        askBefore()
      }),
      at.subscribe(() => ask(question())),
      parent.subscribe(askBefore),
    ]
    changed()
    askBefore()
    return () => {
      for (const stop of stops) stop()
      stopBands()
      if (rest !== null) clearTimeout(rest)
      rest = null
    }
  }

  return { live, at, bands, turndown, before, stopBands, drawBands, follow }
}
