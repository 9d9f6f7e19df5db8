import { refuse } from '../answer.ts'
import type { Trx } from '../documents/rows.ts'
import { sha256 } from '../hash.ts'
import type { DraftEntryTable, DraftTable } from '../tables.ts'
import type { Draft } from '../workshop.ts'

export const findDraft = (trx: Trx, document: string, client: string): Promise<DraftTable | undefined> =>
  trx
    .selectFrom('drafts')
    .selectAll()
    .where('document', '=', document)
    .where('client', '=', client)
    .executeTakeFirst()

export const entryAt = (
  trx: Trx,
  { document, client }: DraftTable,
  place: number,
): Promise<DraftEntryTable | undefined> =>
  trx
    .selectFrom('draft_entries')
    .selectAll()
    .where('document', '=', document)
    .where('client', '=', client)
    .where('place', '=', place)
    .executeTakeFirst()

export const textOf = async (trx: Trx, row: DraftTable): Promise<DraftEntryTable> =>
  (await entryAt(trx, row, row.position)) ??
  refuse(
    'damaged',
    `The edit in progress of ${row.document} has lost its text. The saved revisions are there.`,
  )

const baseHash = async (trx: Trx, base: string): Promise<string | null> => {
  const row = await trx.selectFrom('revisions').select('hash').where('id', '=', base).executeTakeFirst()
  return row?.hash ?? null
}

export const draftOf = async (trx: Trx, row: DraftTable): Promise<Draft> => {
  const { document, client, base, number, position, closed, updated } = row
  const current = await textOf(trx, row)
  const earlier = await entryAt(trx, row, position - 1)
  const later = await entryAt(trx, row, position + 1)
  return {
    document,
    client,
    base,
    number,
    text: current.text,
    undo: earlier === undefined ? null : current.label,
    redo: later === undefined ? null : later.label,
    unsaved: base === null || (await baseHash(trx, base)) !== sha256(current.text),
    closed: closed === 1,
    updated,
  }
}

export const refuseStaleDraft = (): never =>
  refuse(
    'conflict',
    'Another window has gone on with this very edit (a duplicated tab?). Neither was overwritten. Load it again to go on from there, or go on in a window of its own.',
  )
