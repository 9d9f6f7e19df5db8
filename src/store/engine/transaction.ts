import type { Transaction } from 'kysely'
import { type Answer, given, Refused, refuse } from '../answer.ts'
import type { Tables } from '../tables.ts'
import type { Engine } from './engine.ts'

/** Turns refusals and faults of the database into answers. Our own faults stay what they are. */
export const answering = async <T>(engine: Engine, work: () => Promise<T>): Promise<Answer<T>> => {
  try {
    return given(await work())
  } catch (error) {
    if (error instanceof Refused) return { ok: false, refusal: error.refusal }
    const refusal = engine.refusalOf(error)
    if (refusal !== null) return { ok: false, refusal }
    throw error
  }
}

export const newerSentence = (place: string, found: number, known: number): string =>
  `The workshop ${place} is newer than this program: format ${found}, this reads up to ${known}. Nothing was changed. Open it with the newer program, or update this one.`

/**
 * One write, whole or not at all. It takes the workshop's row first: writes come one by one on both
 * databases, numbered in the order in which they take effect, and a program that is older than the
 * workshop has become in the meantime writes nothing.
 */
export const write = <T>(
  engine: Engine,
  work: (trx: Transaction<Tables>, sequence: number) => Promise<T>,
): Promise<Answer<T>> =>
  answering(engine, () =>
    engine.db.transaction().execute(async (trx) => {
      const row = await trx
        .updateTable('workshop')
        .set((eb) => ({ sequence: eb('sequence', '+', 1) }))
        .where('format', '=', engine.format)
        .returning('sequence')
        .executeTakeFirst()
      if (row !== undefined) return work(trx, row.sequence)
      const now = await trx.selectFrom('workshop').select('format').executeTakeFirstOrThrow()
      return refuse('newer', newerSentence(engine.place, now.format, engine.format))
    }),
  )

/** Several reads of one moment, whatever others write meanwhile. */
export const read = <T>(engine: Engine, work: (trx: Transaction<Tables>) => Promise<T>): Promise<Answer<T>> =>
  answering(engine, () =>
    engine.db
      .transaction()
      .setAccessMode('read only')
      .setIsolationLevel('repeatable read')
      .execute((trx) => work(trx)),
  )
