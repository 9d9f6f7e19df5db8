import { useCallback, useEffect, useState } from 'react'
import type { Stove } from '#stove/model.ts'
import { type Hand, hireWorker, type Outcome, openHand } from '../plan/worker/hand.ts'
import type { SpaceWish } from '../plan/worker/job.ts'
import type { SpaceScene } from './scene.ts'

let hand: Hand | null = null
let users = 0

/** A worker of its own: a plan that is being made does not hold up a stove that is being turned. */
const spaceHand = (): Hand => {
  hand ??= openHand(hireWorker)
  return hand
}

/** Keeps the worker for as long as somebody looks; a stove in space costs memory. */
export const useSpaceHand = (): void =>
  useEffect(() => {
    users += 1
    return () => {
      users -= 1
      if (users > 0) return
      hand?.end()
      hand = null
    }
  }, [])

export interface Solved<T> {
  /** The newest there is, of this stove or of the one before it. */
  readonly shown: T | null
  readonly busy: boolean
  readonly sentence: string | null
}

/** Between a change and the solids that follow it [ms]: a hand that drags is not answered solid by solid. */
const SETTLE = 120

type Run<T> = (signal: AbortSignal) => Promise<Outcome<T>>

/** Works a thing out anew whenever it is another job; `run` is null where nobody wants it. */
const useJob = <T>(run: Run<T> | null): Solved<T> => {
  const [state, setState] = useState<Solved<T>>({ shown: null, busy: true, sentence: null })
  useEffect(() => {
    if (run === null) return
    const abort = new AbortController()
    setState((before) => ({ ...before, busy: true }))
    const wait = setTimeout(async () => {
      const outcome = await run(abort.signal)
      if (abort.signal.aborted || outcome.kind === 'given up') return
      setState((before) =>
        outcome.kind === 'done'
          ? { shown: outcome.done, busy: false, sentence: null }
          : { ...before, busy: false, sentence: outcome.sentence },
      )
    }, SETTLE)
    return () => {
      clearTimeout(wait)
      abort.abort()
    }
  }, [run])
  return state
}

/** The solids of a stove as arranged, the newest that are ready. */
export const useScene = (
  stove: Stove,
  arrangement: SpaceWish['arrangement'],
  wanted: boolean,
): Solved<SpaceScene> => {
  const run = useCallback<Run<SpaceScene>>(
    (signal) => spaceHand().run('space', { stove, arrangement }, { signal }),
    [stove, arrangement],
  )
  return useJob(wanted ? run : null)
}

/** The same drawn, where there is no WebGL. */
export const useDrawn = (
  stove: Stove,
  arrangement: SpaceWish['arrangement'],
  dark: boolean,
  wanted: boolean,
): Solved<string> => {
  const run = useCallback<Run<string>>(
    (signal) => spaceHand().run('drawn', { stove, arrangement, dark }, { signal }),
    [stove, arrangement, dark],
  )
  return useJob(wanted ? run : null)
}
