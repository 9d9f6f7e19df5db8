import type { FromWorker, ToWorker } from './ask.ts'
import { createSolver, type Port } from './client.ts'

const openWorker = (): Port => {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'burn' })
  return {
    post: (message: ToWorker) => worker.postMessage(message),
    listen: (onMessage, onBroken) => {
      worker.addEventListener('message', (event: MessageEvent<FromWorker>) => onMessage(event.data))
      worker.addEventListener('error', (event) => onBroken(event.message ?? ''))
    },
    end: () => worker.terminate(),
  }
}

/** The one solver of this page. */
export const solver = createSolver(openWorker)
