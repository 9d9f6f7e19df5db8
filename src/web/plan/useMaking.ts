import { useCallback, useEffect, useRef, useState } from 'react'
import { type Hand, hireWorker, type Outcome, openHand } from './worker/hand.ts'
import type { JobName, Jobs } from './worker/job.ts'

/** What is under way, or how the last thing ended. */
export type MakingState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'making'; readonly what: string; readonly doing: string; readonly share: number | null }
  | { readonly kind: 'failed'; readonly what: string; readonly sentence: string }
  | { readonly kind: 'made'; readonly what: string }

let hand: Hand | null = null

/** The one worker of the page that makes plans. */
export const planHand = (): Hand => {
  hand ??= openHand(hireWorker)
  return hand
}

/** Runs one job after another for a screen, with what it is doing and a way to give it up. */
export const useMaking = () => {
  const [state, setState] = useState<MakingState>({ kind: 'idle' })
  const abort = useRef<AbortController | null>(null)
  useEffect(() => () => abort.current?.abort(), [])

  const run = useCallback(
    async <N extends JobName>(
      what: string,
      name: N,
      wish: Jobs[N]['wish'],
    ): Promise<Outcome<Jobs[N]['done']>> => {
      abort.current?.abort()
      const mine = new AbortController()
      abort.current = mine
      setState({ kind: 'making', what, doing: 'Beginning', share: null })
      const outcome = await planHand().run(name, wish, {
        signal: mine.signal,
        tell: (doing, share) => {
          if (!mine.signal.aborted) setState({ kind: 'making', what, doing, share })
        },
      })
      if (abort.current !== mine) return outcome
      abort.current = null
      setState(
        outcome.kind === 'done'
          ? { kind: 'made', what }
          : outcome.kind === 'failed'
            ? { kind: 'failed', what, sentence: outcome.sentence }
            : { kind: 'idle' },
      )
      return outcome
    },
    [],
  )
  const cancel = useCallback(() => abort.current?.abort(), [])
  return { state, run, cancel }
}
