import type { Answer } from '#wire/answer.ts'
import type { CallName, RequestOf, ValueOf } from '#wire/calls.ts'
import type { UploadName, UploadRequestOf, UploadValueOf } from '#wire/uploads.ts'
import { keepAhead } from './ahead.ts'
import type { Outgoing } from './keep.ts'
import { client } from './link.ts'
import type { Outbox } from './outbox.ts'
import { openDocument, revisionBy } from './revisions.ts'
import { station } from './station.ts'
import { underWay } from './underWay.ts'

export { about, documents, documentsFrom, drafts, headOf, takenAway, undoState } from './known.ts'
export { door, forgetRefusal, newAct, onSettled, refusals, station } from './station.ts'

/** Something on its way to the workshop. */
export interface Sent<T> {
  /** It is safe in this browser now, and gets there sooner or later. */
  readonly safe: Promise<void>
  /** What the workshop said, when it has said it. */
  readonly answer: Promise<Answer<T>>
}

const layIn = async (
  entry: Omit<Outgoing, 'client'>,
): Promise<{ readonly key: number; readonly outbox: Outbox }> => {
  const { keep, outbox, window } = await station()
  await keepAhead(keep, entry.name, entry.request)
  // On the drive when it is called safe, not only in the browser's memory.
  const trx = keep.transaction('outbox', 'readwrite', { durability: 'strict' })
  const [key] = await Promise.all([trx.store.add({ ...entry, client: window }), trx.done])
  return { key, outbox }
}

const sent = <T>(entry: Promise<{ readonly key: number; readonly outbox: Outbox }>): Sent<T> => {
  const answer = entry.then(({ key, outbox }) => {
    const said = outbox.answerTo(key)
    outbox.nudge()
    return said as Promise<Answer<T>>
  })
  return { safe: entry.then(() => undefined), answer }
}

/** The workshop behind the page. */
export const workshop = {
  /** Asks for something. Never throws; a refusal tells why in a sentence. */
  ask: client.call,

  /** Does something: kept in this browser first, sent in order, sent again until it is answered. */
  write: <N extends CallName>(name: N, request: RequestOf<N>): Sent<ValueOf<N>> =>
    sent(underWay(layIn({ name, request }))),

  /** The same with bytes: a photo. */
  upload: <N extends UploadName>(name: N, request: UploadRequestOf<N>, bytes: Blob): Sent<UploadValueOf<N>> =>
    sent(underWay(layIn({ name, request, bytes }))),

  /** A revision by its id, from this browser where it was seen before. */
  revision: revisionBy,

  /** A document with the revision that counts; from this browser while the workshop does not answer. */
  open: openDocument,
}
