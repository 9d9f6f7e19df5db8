import type { Answer, Refusal, RefusalCode } from '#wire/answer.ts'
import type { CallName, RequestOf } from '#wire/calls.ts'
import type { Draft } from '#wire/drafts.ts'
import { isUploadName, type UploadRequestOf } from '#wire/uploads.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import type { Keep, Outgoing } from './keep.ts'
import { client, uploader } from './link.ts'
import { now } from './names.ts'
import { inPlaceOf } from './window.ts'

/** Nothing was done, or it is not known: the same thing is sent again. */
const SEND_AGAIN: ReadonlySet<RefusalCode> = new Set([
  'unreachable',
  'busy',
  'broken',
  'too often',
  'full',
  'read-only',
  'not paired',
])

/** Pause after the first failure, doubled up to the last. [ms] */
const FIRST_PAUSE = 400
const LAST_PAUSE = 5000

export interface OutboxWays {
  readonly keep: Keep
  readonly window: string
  /**
   * Resolves when the workshop of this page answers; the outbox never speaks to another one. `failed`: why the
   * last thing sent was not answered, so that it looks again.
   */
  readonly reachable: (failed: Refusal | null) => Promise<void>
  readonly settled: (sent: Outgoing, answer: Answer<unknown>) => Promise<void>
}

export interface Outbox {
  /** Counts anew what is laid in. */
  readonly look: () => Promise<unknown>
  /** Sends whatever was laid in since. */
  readonly nudge: () => void
  /** Holds an entry of this window, and those behind it, back until the function it gives is called. */
  readonly hold: (token: string) => () => void
  /** What the workshop says to an entry, when it says it. */
  readonly answerTo: (key: number) => Promise<Answer<unknown>>
  /** Entries of this window that are not answered yet. */
  readonly waiting: Cell<readonly Outgoing[]>
}

type WithNumber = { readonly number: number }

/** The request with the draft's number as last heard. */
const filled = ({ name, request, draft }: Outgoing, number: number): unknown => {
  if (draft === undefined) return request
  if (name !== 'save') return { ...(request as object), number }
  const { act, wanted } = request as RequestOf<'save'>
  return { act, wanted: { ...wanted, draft: { number } } }
}

const send = (entry: Outgoing, request: unknown): Promise<Answer<unknown>> =>
  isUploadName(entry.name)
    ? uploader.upload(entry.name, request as UploadRequestOf<'attach'>, entry.bytes ?? new Blob())
    : client.call(entry.name as CallName, request as never)

/** The draft is where this very entry would have taken it: it was done, and only the answer got lost. */
const wasDone = async (
  { draft, client: window }: Outgoing,
  number: number,
): Promise<Answer<Draft> | null> => {
  if (draft === undefined) return null
  const there = await client.call('draft', { document: draft.document, client: window })
  if (!there.ok || there.value === null) return null
  const { value } = there
  return value.number === number + 1 && value.text === draft.says ? { ok: true, value } : null
}

export const openOutbox = ({ keep, window, reachable, settled }: OutboxWays): Outbox => {
  let again = false
  const held = new Set<string>()
  const answers = new Map<number, (answer: Answer<unknown>) => void>()
  const waiting = createCell<readonly Outgoing[]>([])
  const look = async (): Promise<readonly Outgoing[]> => {
    const mine = await keep.getAllFromIndex('outbox', 'client', window)
    waiting.set(mine)
    return mine
  }

  /** Takes an answered entry out, with what follows from it, in one transaction. */
  const settle = async (entry: Outgoing, number: number, answer: Answer<unknown>): Promise<void> => {
    const trx = keep.transaction(['outbox', 'numbers', 'refused'], 'readwrite')
    await trx.objectStore('outbox').delete(entry.key as number)
    if (entry.draft !== undefined && answer.ok) {
      const said = (answer.value as Partial<WithNumber> | null)?.number
      const next = entry.name === 'save' ? number + 1 : (said ?? number + 1)
      await trx.objectStore('numbers').put(next, [entry.draft.document, entry.client])
    }
    if (entry.draft === undefined && !answer.ok && !answers.has(entry.key as number))
      await trx.objectStore('refused').add({
        name: entry.name,
        sentence: answer.refusal.sentence,
        at: now(),
        request: entry.request,
      })
    await trx.done
    await settled(entry, answer)
    answers.get(entry.key as number)?.(answer)
    answers.delete(entry.key as number)
  }

  /** Null: answered. Otherwise why not yet. */
  const once = async (entry: Outgoing): Promise<Refusal | null> => {
    const { draft, client: owner } = entry
    const number = draft === undefined ? 0 : ((await keep.get('numbers', [draft.document, owner])) ?? 0)
    const answer = await send(entry, filled(entry, number))
    if (!answer.ok && SEND_AGAIN.has(answer.refusal.code)) return answer.refusal
    const done = answer.ok ? null : await wasDone(entry, number)
    await settle(entry, number, done ?? answer)
    return null
  }

  /** Sends one window's entries in the order in which they were laid in. */
  const drain = async (owner: string): Promise<void> => {
    let pause = FIRST_PAUSE
    let failed: Refusal | null = null
    for (;;) {
      // What this window does comes first.
      if (owner !== window && again) return
      const [entry] = await keep.getAllFromIndex('outbox', 'client', owner, 1)
      if (entry === undefined || (entry.token !== undefined && held.has(entry.token))) return
      await reachable(failed)
      failed = await once(entry)
      if (failed === null) pause = FIRST_PAUSE
      else {
        await new Promise((resolve) => setTimeout(resolve, pause))
        pause = Math.min(2 * pause, LAST_PAUSE)
      }
      if (owner === window) await look()
    }
  }

  const run = async (): Promise<void> => {
    do {
      again = false
      await look()
      await drain(window)
      for (const { client: other } of await keep.getAll('outbox'))
        if (other !== window) await inPlaceOf(other, () => drain(other))
    } while (again)
    await look()
  }
  let running: Promise<void> | null = null
  const nudge = (): void => {
    again = true
    if (running !== null) return
    running = run().finally(() => {
      running = null
      if (again) nudge()
    })
  }

  return {
    look,
    nudge,
    hold: (token) => {
      held.add(token)
      return () => {
        held.delete(token)
        nudge()
      }
    },
    answerTo: (key) => new Promise((resolve) => answers.set(key, resolve)),
    waiting: { get: waiting.get, subscribe: waiting.subscribe },
  }
}
