import type { Transaction } from 'kysely'
import { refuse } from '../answer.ts'
import { sha256 } from '../hash.ts'
import type { Kind } from '../kinds.ts'
import type { DocumentTable, RevisionTable, Tables } from '../tables.ts'
import type { DocumentHead, RevisionHead } from '../workshop.ts'

export type Trx = Transaction<Tables>

export const headOf = (row: DocumentTable): DocumentHead => ({
  id: row.id,
  kind: row.kind as Kind,
  name: row.name,
  head: row.head,
  deleted: row.deleted === 1,
  version: row.version,
  aboutDocument: row.about_document,
  aboutRevision: row.about_revision,
  created: row.created,
  touched: row.touched,
})

export const findDocument = (trx: Trx, id: string): Promise<DocumentTable | undefined> =>
  trx.selectFrom('documents').selectAll().where('id', '=', id).executeTakeFirst()

export const documentRow = async (trx: Trx, id: string): Promise<DocumentTable> =>
  (await findDocument(trx, id)) ?? refuse('unknown', `The workshop knows no document ${id}.`)

export const findRevision = (trx: Trx, id: string): Promise<RevisionTable | undefined> =>
  trx.selectFrom('revisions').selectAll().where('id', '=', id).executeTakeFirst()

/** A revision as it was written, or a refusal: bytes that changed on the drive are not handed out as the maker's words. */
export const revisionRow = async (trx: Trx, id: string): Promise<RevisionTable> => {
  const row = (await findRevision(trx, id)) ?? refuse('unknown', `The workshop knows no revision ${id}.`)
  if (sha256(row.text) !== row.hash) refuse('damaged', damagedRevision(id))
  return row
}

export const damagedRevision = (id: string): string =>
  `The text of revision ${id} is not the one that was written: the drive or another program changed it. Its other revisions can be opened; take this one from an archive or from a copy.`

/** Parents of some revisions, or of all, by revision and in their order. */
export const parentsOf = async (
  trx: Trx,
  document: string | null,
): Promise<ReadonlyMap<string, readonly string[]>> => {
  const all = trx.selectFrom('parents').select(['revision', 'parent']).orderBy('revision').orderBy('place')
  const rows = await (document === null
    ? all
    : all.where('revision', 'in', (eb) =>
        eb.selectFrom('revisions').select('id').where('document', '=', document),
      )
  ).execute()
  const parents = new Map<string, string[]>()
  for (const { revision, parent } of rows) {
    const known = parents.get(revision)
    if (known === undefined) parents.set(revision, [parent])
    else known.push(parent)
  }
  return parents
}

export const revisionHeadOf = (
  row: Omit<RevisionTable, 'text'>,
  parents: ReadonlyMap<string, readonly string[]>,
): RevisionHead => ({
  id: row.id,
  document: row.document,
  parents: parents.get(row.id) ?? [],
  note: row.note,
  hash: row.hash,
  created: row.created,
})
