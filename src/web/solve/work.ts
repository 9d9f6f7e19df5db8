import { bandsOf, createLive, failure, quickAnswer, told } from './answer.ts'
import type { Ask, FromWorker, ToWorker } from './ask.ts'

/** How long a slice of long work may take before whoever waits is let in [ms]. */
const SLICE = 24

/**
 * What a worker does with its messages: quick things at once, bands a slice at a time, so that word of cancelling gets
 * in between. Clock, way out and turn of the loop come in as arguments.
 */
export const createWork = (
  say: (message: FromWorker) => void,
  clock: () => number,
  nextTurn: () => Promise<void>,
): ((message: ToWorker) => Promise<void>) => {
  const cancelled = new Set<number>()
  const live = createLive()

  const bands = async (id: number, ask: Extract<Ask, { kind: 'bands' }>): Promise<void> => {
    const steps = bandsOf(ask)
    let until = clock() + SLICE
    for (;;) {
      const step = steps.next()
      if (step.done === true) {
        say({ id, answer: { ok: true, value: step.value } })
        return
      }
      if (clock() < until) continue
      say({ id, done: Math.round(step.value * ask.samples), of: ask.samples })
      await nextTurn()
      if (cancelled.delete(id)) return
      until = clock() + SLICE
    }
  }

  return async (message) => {
    if ('cancel' in message) {
      cancelled.add(message.id)
      return
    }
    const { id, ask } = message
    if (cancelled.delete(id)) return
    if (ask.kind === 'bands') {
      try {
        await bands(id, ask)
      } catch (error) {
        say({ id, answer: failure(error) })
      }
      return
    }
    say({ id, answer: told(() => (ask.kind === 'live' ? live(ask) : quickAnswer(ask))) })
  }
}
