import type { LoggerAnswers, LoggerAsk } from './asked.ts'

interface Waiting {
  readonly resolve: (value: never) => void
  readonly reject: (fault: Error) => void
}

let worker: Worker | null = null
let count = 0
const waiting = new Map<number, Waiting>()

const broke = (why: string): void => {
  for (const { reject } of waiting.values()) reject(new Error(why))
  waiting.clear()
  worker?.terminate()
  worker = null
}

const open = (): Worker => {
  if (worker !== null) return worker
  worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
  worker.addEventListener(
    'message',
    ({ data }: MessageEvent<{ readonly id: number; readonly value?: unknown; readonly fault?: string }>) => {
      const one = waiting.get(data.id)
      waiting.delete(data.id)
      if (data.fault === undefined) one?.resolve(data.value as never)
      else one?.reject(new Error(data.fault))
    },
  )
  worker.addEventListener('error', ({ message }) => broke(message))
  return worker
}

/** Has a file looked at beside the page, so that the page stays awake. */
export const askLogger = <A extends LoggerAsk>(ask: A): Promise<LoggerAnswers[A['kind']]> =>
  new Promise((resolve, reject) => {
    count += 1
    waiting.set(count, { resolve, reject })
    open().postMessage({ id: count, ask })
  })
