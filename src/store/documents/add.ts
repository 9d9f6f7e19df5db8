import { refuse } from '../answer.ts'
import { sha256 } from '../hash.ts'
import type { DocumentTable } from '../tables.ts'
import type { DocumentHead } from '../workshop.ts'
import { noteChange, type Step } from './journal.ts'
import { findDocument, findRevision, headOf, type Trx } from './rows.ts'

export interface AddedRevision {
  readonly id: string
  readonly document: string
  readonly text: string
  readonly note: string
  readonly created: string
  readonly parents: readonly string[]
}

export const checkParents = async (trx: Trx, parents: readonly string[]): Promise<void> => {
  if (new Set(parents).size !== parents.length)
    refuse('bad input', 'A revision names the same parent twice. Nothing was changed.')
  for (const parent of parents) {
    if ((await findRevision(trx, parent)) === undefined)
      refuse('unknown', `The workshop knows no revision ${parent} to go on from. Nothing was changed.`)
  }
}

/** Writes come one by one, so nobody else takes the same place. */
const nextPlace = async (trx: Trx, table: 'documents' | 'revisions'): Promise<number> => {
  const last = await trx
    .selectFrom(table)
    .select('place')
    .orderBy('place', 'desc')
    .limit(1)
    .executeTakeFirst()
  return (last?.place ?? 0) + 1
}

/** Adds a revision. Its document and its parents are there. */
export const addRevision = async (trx: Trx, revision: AddedRevision): Promise<void> => {
  const { id, document, text, note, created, parents } = revision
  if ((await findRevision(trx, id)) !== undefined)
    refuse(
      'conflict',
      `There is a revision ${id} already, and revisions are never written over. Nothing was changed.`,
    )
  await trx
    .insertInto('revisions')
    .values({
      id,
      document,
      text,
      note,
      created,
      hash: sha256(text),
      place: await nextPlace(trx, 'revisions'),
    })
    .execute()
  for (const [place, parent] of parents.entries())
    await trx.insertInto('parents').values({ revision: id, parent, place }).execute()
}

export type AddedDocument = Pick<
  DocumentTable,
  'id' | 'kind' | 'name' | 'head' | 'about_document' | 'about_revision' | 'created'
>

/** Adds a document; its head follows. Undo of that takes it away. */
export const addDocument = async (
  step: Step,
  added: AddedDocument,
  deleted = false,
): Promise<DocumentHead> => {
  const { trx, sequence } = step
  if ((await findDocument(trx, added.id)) !== undefined)
    refuse('conflict', `There is a document ${added.id} already. Nothing was changed.`)
  const { name, head } = added
  noteChange(step, added.id, { name, head, deleted: true }, { name, head, deleted })
  const row = await trx
    .insertInto('documents')
    .values({
      ...added,
      deleted: deleted ? 1 : 0,
      version: 1,
      touched: sequence,
      place: await nextPlace(trx, 'documents'),
    })
    .returningAll()
    .executeTakeFirstOrThrow()
  return headOf(row)
}
