import type { Context } from 'hono'
import { streamSSE } from 'hono/streaming'
import type { Workshop } from '#store/workshop.ts'
import type { Refusal } from '#wire/answer.ts'
import type { WatchEvent } from '#wire/watch.ts'

/** Between two looks at the workshop, each of them three small queries [ms] */
const EVERY = 250
/** Between two signs of life; what lies between browser and server gives a line up after half a minute or more. [ms] */
const ALIVE = 10_000
/** After so long a lost browser asks again [ms] */
const AGAIN = 1000

export interface Watching {
  readonly workshop: Workshop
  readonly since: number
  /** Ends it: the bench closes, or others want the place. */
  readonly over: AbortSignal
  /** Whether whoever listens may still know. */
  readonly stillLetIn: () => boolean
  readonly ended: () => void
  /** A fault of the program, for whoever can mend it. */
  readonly fault: (error: unknown) => void
}

const NOT_ANY_MORE: Refusal = {
  code: 'not paired',
  sentence: 'This device is not let in any more. Ask for a new code at the bench.',
}

/** Changes of the workshop as they come, until the browser, the bench or a refusal ends it. */
export const watching = (
  c: Context,
  { workshop, since, over, stillLetIn, ended, fault }: Watching,
): Response =>
  streamSSE(c, async (stream) => {
    const left = new AbortController()
    // The stream tells of a browser that hangs up; the request's own signal of a line that broke.
    stream.onAbort(() => left.abort())
    const signal = AbortSignal.any([left.signal, over, c.req.raw.signal])
    const say = (event: WatchEvent, value: unknown, id?: number): Promise<void> =>
      stream.writeSSE({ event, data: JSON.stringify(value), ...(id === undefined ? {} : { id: `${id}` }) })
    const alive = setInterval(() => {
      if (stillLetIn()) void stream.write(':\n\n')
      else left.abort()
    }, ALIVE)
    try {
      await stream.write(`retry: ${AGAIN}\n\n`)
      for await (const answer of workshop.watch({ since, every: EVERY, signal })) {
        if (!stillLetIn()) break
        if (answer.ok) await say('changes', answer.value, answer.value.sequence)
        else await say('refusal', answer.refusal)
      }
      if (!stillLetIn()) await say('refusal', NOT_ANY_MORE)
    } catch (error) {
      fault(error)
    } finally {
      clearInterval(alive)
      ended()
    }
  })
