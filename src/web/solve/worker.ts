import type { FromWorker, ToWorker } from './ask.ts'
import { createWork } from './work.ts'

/** The far end of `client.ts`: the pure rooms of the house in a thread of their own. */

const turns = new MessageChannel()
const waiting: (() => void)[] = []
turns.port1.onmessage = () => waiting.shift()?.()
/** Messages that have come in are handled before it goes on; a timer would be held up to 4 ms. */
const nextTurn = (): Promise<void> =>
  new Promise((go) => {
    waiting.push(go)
    turns.port2.postMessage(null)
  })

const work = createWork(
  (message: FromWorker) => postMessage(message),
  () => performance.now(),
  nextTurn,
)
addEventListener('message', (event: MessageEvent<ToWorker>) => void work(event.data))
