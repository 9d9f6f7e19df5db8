import type { Answer } from '../answer.ts'
import type { Engine } from '../engine/engine.ts'
import { read } from '../engine/transaction.ts'
import type { DocumentHead, ListWish, OpenDocument, Revision, RevisionHead } from '../workshop.ts'
import { documentRow, headOf, parentsOf, revisionHeadOf, revisionRow, type Trx } from './rows.ts'

const REVISION_HEAD = ['id', 'document', 'note', 'hash', 'created', 'place'] as const

export const list = (engine: Engine, wish: ListWish = {}): Promise<Answer<readonly DocumentHead[]>> =>
  read(engine, async (trx) => {
    const { kinds, deleted = false, aboutDocument } = wish
    let query = trx.selectFrom('documents').selectAll().orderBy('place')
    if (kinds !== undefined) query = query.where('kind', 'in', kinds.length === 0 ? [''] : kinds)
    if (!deleted) query = query.where('deleted', '=', 0)
    if (aboutDocument !== undefined) query = query.where('about_document', '=', aboutDocument)
    const rows = await query.execute()
    return rows.map(headOf)
  })

const revisionOf = async (trx: Trx, id: string): Promise<Revision> => {
  const row = await revisionRow(trx, id)
  const rows = await trx
    .selectFrom('parents')
    .select('parent')
    .where('revision', '=', id)
    .orderBy('place')
    .execute()
  const parents = new Map([[id, rows.map(({ parent }) => parent)]])
  return { ...revisionHeadOf(row, parents), text: row.text }
}

export const revision = (engine: Engine, id: string): Promise<Answer<Revision>> =>
  read(engine, (trx) => revisionOf(trx, id))

export const open = (engine: Engine, document: string): Promise<Answer<OpenDocument>> =>
  read(engine, async (trx) => {
    const row = await documentRow(trx, document)
    return { document: headOf(row), revision: await revisionOf(trx, row.head) }
  })

export const history = (engine: Engine, document: string): Promise<Answer<readonly RevisionHead[]>> =>
  read(engine, async (trx) => {
    await documentRow(trx, document)
    const rows = await trx
      .selectFrom('revisions')
      .select(REVISION_HEAD)
      .where('document', '=', document)
      .orderBy('place')
      .execute()
    const parents = await parentsOf(trx, document)
    return rows.map((row) => revisionHeadOf(row, parents))
  })

/** Everything that hangs together with one document's revisions by parents, and the rest of those documents. */
export const family = (engine: Engine, document: string): Promise<Answer<readonly RevisionHead[]>> =>
  read(engine, async (trx) => {
    const { kind } = await documentRow(trx, document)
    const rows = await trx
      .selectFrom('revisions')
      .innerJoin('documents', 'documents.id', 'revisions.document')
      .select(REVISION_HEAD.map((column) => `revisions.${column}` as const))
      .where('documents.kind', '=', kind)
      .orderBy('revisions.place')
      .execute()
    const parents = await parentsOf(trx, null)
    const heads = rows.map((row) => revisionHeadOf(row, parents))
    const kin = relatives(heads, document)
    return heads.filter((head) => kin.has(head.document))
  })

/** Documents linked with one by any chain of parents, either way. */
const relatives = (heads: readonly RevisionHead[], document: string): ReadonlySet<string> => {
  const home = new Map(heads.map((head) => [head.id, head.document]))
  const linked = new Map<string, Set<string>>()
  const link = (from: string, to: string): void => {
    linked.set(from, (linked.get(from) ?? new Set()).add(to))
  }
  for (const head of heads) {
    for (const parent of head.parents) {
      const other = home.get(parent)
      if (other === undefined) continue
      link(head.document, other)
      link(other, head.document)
    }
  }
  const kin = new Set([document])
  for (const one of kin) for (const other of linked.get(one) ?? []) kin.add(other)
  return kin
}
