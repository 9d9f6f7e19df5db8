import type { Conditions } from '#compose/conditions.ts'
import type { Answered, Answers, Ask, FromWorker, Given, ToWorker } from './ask.ts'

/** The near end of a worker. */
export interface Port {
  readonly post: (message: ToWorker) => void
  readonly listen: (onMessage: (message: FromWorker) => void, onBroken: (why: string) => void) => void
  readonly end: () => void
}

export interface Wishes {
  readonly onProgress?: ((done: number, of: number) => void) | undefined
  readonly signal?: AbortSignal | undefined
}

/** Asks and answers; whoever aborts is answered by a rejection with the signal's reason. */
export interface Solver {
  /** Begins the worker for what is quick before anything is asked: it loads while the stove is still fetched. */
  readonly wake: () => void
  readonly steady: Asking<'steady'>
  /** The whole report, without bands. */
  readonly burn: Asking<'burn'>
  readonly turndown: Asking<'turndown'>
  readonly live: (
    given: Given,
    conditions: Conditions,
    key: number,
    at: number | null,
  ) => Promise<Answered<Answers['live']>>
  /** Bands from so many sets of coefficients, in a worker of their own: a gesture does not wait for them. */
  readonly bands: (
    given: Given,
    conditions: Conditions,
    wishes?: Wishes & { readonly samples?: number },
  ) => Promise<Answered<Answers['bands']>>
}

type Asking<K extends Ask['kind']> = (
  given: Given,
  conditions: Conditions,
  wishes?: Wishes,
) => Promise<Answered<Answers[K]>>

/** As many as the command line draws from. */
export const USUAL_SETS = 48

interface Waiting {
  readonly answer: (answered: Answered<never>) => void
  readonly progress: Wishes['onProgress']
}

const BROKEN = 'What works out the burn has stopped. Change something, and it begins anew'

/** One worker, begun when it is first asked, begun anew after it broke. */
const createHand = (open: () => Port) => {
  let port: Port | null = null
  let count = 0
  const waiting = new Map<number, Waiting>()

  const begin = (): Port => {
    const begun = open()
    begun.listen(
      (message) => {
        const one = waiting.get(message.id)
        if (one === undefined) return
        if ('answer' in message) {
          waiting.delete(message.id)
          one.answer(message.answer as Answered<never>)
        } else one.progress?.(message.done, message.of)
      },
      (why) => {
        begun.end()
        if (port === begun) port = null
        const all = [...waiting.values()]
        waiting.clear()
        for (const { answer } of all)
          answer({ ok: false, sentence: `${BROKEN}${why === '' ? '' : ` (${why})`}.`, problems: [] })
      },
    )
    return begun
  }

  const wake = (): void => {
    port ??= begin()
  }
  const asks = <K extends Ask['kind']>(
    ask: Extract<Ask, { kind: K }>,
    { onProgress, signal }: Wishes = {},
  ): Promise<Answered<Answers[K]>> =>
    new Promise((resolve, reject) => {
      if (signal?.aborted === true) {
        reject(signal.reason)
        return
      }
      port ??= begin()
      const here = port
      const id = count++
      const abort = (): void => {
        waiting.delete(id)
        here.post({ id, cancel: true })
        reject(signal?.reason)
      }
      signal?.addEventListener('abort', abort, { once: true })
      waiting.set(id, {
        answer: (answered) => {
          signal?.removeEventListener('abort', abort)
          resolve(answered)
        },
        progress: onProgress,
      })
      here.post({ id, ask })
    })
  return { asks, wake }
}

/** A solver with a worker for what is quick and another for what is long. */
export const createSolver = (open: () => Port): Solver => {
  const { asks: quick, wake } = createHand(open)
  const { asks: long } = createHand(open)
  return {
    wake,
    steady: (stove, conditions, wishes) => quick({ kind: 'steady', stove, conditions }, wishes),
    burn: (stove, conditions, wishes) => quick({ kind: 'burn', stove, conditions }, wishes),
    turndown: (stove, conditions, wishes) => quick({ kind: 'turndown', stove, conditions }, wishes),
    live: (stove, conditions, key, at) => quick({ kind: 'live', stove, conditions, key, at }),
    bands: (stove, conditions, { samples = USUAL_SETS, ...wishes } = {}) =>
      long({ kind: 'bands', stove, conditions, samples }, wishes),
  }
}
