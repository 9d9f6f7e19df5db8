import type { Answer } from './answer.ts'
import { damagedRevision } from './documents/rows.ts'
import type { Engine } from './engine/engine.ts'
import { read } from './engine/transaction.ts'
import { sha256 } from './hash.ts'

/** So many rows in memory at once. */
const PAGE = 50

/** What of the workshop is not as it was written, as sentences; none: all of it is. */
export const verify = (engine: Engine): Promise<Answer<readonly string[]>> =>
  read(engine, async (trx) => {
    const faults: string[] = []
    const revisions = await trx.selectFrom('revisions').select('id').execute()
    for (let from = 0; from < revisions.length; from += PAGE) {
      const ids = revisions.slice(from, from + PAGE).map(({ id }) => id)
      const rows = await trx
        .selectFrom('revisions')
        .select(['id', 'text', 'hash'])
        .where('id', 'in', ids)
        .execute()
      for (const { id, text, hash } of rows) if (sha256(text) !== hash) faults.push(damagedRevision(id))
    }
    for (const { hash } of await trx.selectFrom('blobs').select('hash').execute()) {
      const { bytes } = await trx
        .selectFrom('blobs')
        .select('bytes')
        .where('hash', '=', hash)
        .executeTakeFirstOrThrow()
      if (sha256(new Uint8Array(bytes)) !== hash)
        faults.push(`The bytes of the photo ${hash.slice(0, 12)} are not those that were kept.`)
    }
    const headless = await trx
      .selectFrom('documents')
      .leftJoin('revisions', 'revisions.id', 'documents.head')
      .select(['documents.name', 'documents.head'])
      .where('revisions.id', 'is', null)
      .execute()
    for (const { name, head } of headless) faults.push(`“${name}” has lost its revision ${head}.`)
    return faults
  })
