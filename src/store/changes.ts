import { setTimeout as pause } from 'node:timers/promises'
import type { Answer } from './answer.ts'
import { headOf } from './documents/rows.ts'
import type { Engine } from './engine/engine.ts'
import { answering, read } from './engine/transaction.ts'
import type { Changes, WatchWish, WorkshopAbout } from './workshop.ts'

export const about = (engine: Engine): Promise<Answer<WorkshopAbout>> =>
  answering(engine, async () => ({
    ...(await engine.db.selectFrom('workshop').selectAll().executeTakeFirstOrThrow()),
    place: engine.place,
  }))

export const changesSince = (engine: Engine, since: number): Promise<Answer<Changes>> =>
  read(engine, async (trx) => {
    const { sequence } = await trx.selectFrom('workshop').select('sequence').executeTakeFirstOrThrow()
    const documents = await trx
      .selectFrom('documents')
      .selectAll()
      .where('touched', '>', since)
      .orderBy('touched')
      .execute()
    const drafts = await trx
      .selectFrom('drafts')
      .select(['document', 'client', 'number', 'closed'])
      .where('touched', '>', since)
      .orderBy('touched')
      .execute()
    return {
      sequence,
      documents: documents.map(headOf),
      drafts: drafts.map((draft) => ({ ...draft, closed: draft.closed === 1 })),
    }
  })

/** Looks again and again: other programs write into the same workshop, and only the file tells. */
export async function* watch(
  engine: Engine,
  { since, every, signal }: WatchWish,
): AsyncGenerator<Answer<Changes>, void> {
  let seen = since
  while (!signal.aborted) {
    const changes = await changesSince(engine, seen)
    if (signal.aborted) return
    if (!changes.ok) {
      yield changes
      return
    }
    const { sequence, documents, drafts } = changes.value
    seen = sequence
    if (documents.length > 0 || drafts.length > 0) yield changes
    else await pause(every, undefined, { signal }).catch(() => undefined)
  }
}
