import { type Problem, problemSentence } from '#basis/problem.ts'
import type { JobName, Jobs, Request, Word } from './job.ts'

/** What became of a job: what it made, a sentence why not, or that nobody wants it any more. */
export type Outcome<T> =
  | { readonly kind: 'done'; readonly done: T }
  | { readonly kind: 'failed'; readonly sentence: string; readonly problems: readonly Problem[] }
  | { readonly kind: 'given up' }

export interface Listening {
  readonly tell?: (doing: string, share: number | null) => void
  readonly signal?: AbortSignal
}

/** A worker that does one thing after another. */
export interface Hand {
  readonly run: <N extends JobName>(
    name: N,
    wish: Jobs[N]['wish'],
    how?: Listening,
  ) => Promise<Outcome<Jobs[N]['done']>>
  /** Ends the worker; what was asked of it is given up. */
  readonly end: () => void
}

/** What a worker is to the hand that leads it: the browser's own, or one of a test. */
export interface Labourer {
  readonly post: (request: Request) => void
  readonly end: () => void
}

export type Hire = (word: (word: Word) => void, broke: (sentence: string) => void) => Labourer

interface Order {
  readonly request: Request
  readonly tell: (doing: string, share: number | null) => void
  readonly settle: (outcome: Outcome<unknown>) => void
}

/**
 * Leads a worker: one job at a time, in the order they came. What is given up before its turn is never begun; what is
 * given up in the middle costs the worker its place, for it hears nothing while it works.
 */
export const openHand = (hire: Hire): Hand => {
  let labourer: Labourer | null = null
  let number = 0
  const orders: Order[] = []

  const finish = (id: number, outcome: Outcome<unknown>): void => {
    const [first] = orders
    if (first === undefined || first.request.id !== id) return
    orders.shift()
    first.settle(outcome)
    next()
  }
  const heard = (word: Word): void => {
    const [first] = orders
    if (first === undefined || first.request.id !== word.id) return
    switch (word.kind) {
      case 'doing':
        first.tell(word.doing, word.share)
        return
      case 'done':
        finish(word.id, { kind: 'done', done: word.done })
        return
      case 'refused':
        finish(word.id, {
          kind: 'failed',
          sentence: word.problems.map(problemSentence).join(' '),
          problems: word.problems,
        })
        return
      case 'broken':
        finish(word.id, { kind: 'failed', sentence: word.sentence, problems: [] })
    }
  }
  const broke = (sentence: string): void => {
    labourer?.end()
    labourer = null
    const [first] = orders
    if (first !== undefined) finish(first.request.id, { kind: 'failed', sentence, problems: [] })
  }
  const next = (): void => {
    const [first] = orders
    if (first === undefined) return
    labourer ??= hire(heard, broke)
    labourer.post(first.request)
  }
  const giveUp = (order: Order): void => {
    const place = orders.indexOf(order)
    if (place < 0) return
    orders.splice(place, 1)
    order.settle({ kind: 'given up' })
    if (place > 0) return
    labourer?.end()
    labourer = null
    next()
  }
  return {
    run: <N extends JobName>(
      name: N,
      wish: Jobs[N]['wish'],
      { tell = () => undefined, signal }: Listening = {},
    ) =>
      new Promise<Outcome<Jobs[N]['done']>>((resolve) => {
        if (signal?.aborted) {
          resolve({ kind: 'given up' })
          return
        }
        number += 1
        const order: Order = {
          request: { id: number, name, wish },
          tell,
          settle: (outcome) => resolve(outcome as Outcome<Jobs[N]['done']>),
        }
        signal?.addEventListener('abort', () => giveUp(order), { once: true })
        orders.push(order)
        if (orders.length === 1) next()
      }),
    end: () => {
      labourer?.end()
      labourer = null
      for (const order of orders.splice(0)) order.settle({ kind: 'given up' })
    },
  }
}

/** A hand with a worker of this browser's. */
export const hireWorker: Hire = (word, broke) => {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
  worker.addEventListener('message', (event: MessageEvent<Word>) => word(event.data))
  worker.addEventListener('error', (event) =>
    broke(
      `What makes the plan broke: ${event.message || 'it could not be loaded. Is the bench still there?'}`,
    ),
  )
  return { post: (request) => worker.postMessage(request), end: () => worker.terminate() }
}
