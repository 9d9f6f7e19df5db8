import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import { revisionRow, type Trx } from '../documents/rows.ts'
import type { Engine } from '../engine/engine.ts'
import { read, write } from '../engine/transaction.ts'
import { checkId, checkInstant, checkText, MAX_LABEL, MAX_TEXT } from '../limits.ts'
import type { DraftTable } from '../tables.ts'
import type { Autosave, Draft, EditMove } from '../workshop.ts'
import { draftOf, entryAt, findDraft, refuseStaleDraft, textOf } from './rows.ts'

/** So many edits back undo reaches. */
export const KEPT_ENTRIES = 200

interface Entry {
  readonly text: string
  readonly label: string
}

const putEntry = async (trx: Trx, row: DraftTable, place: number, { text, label }: Entry): Promise<void> => {
  const { document, client } = row
  await trx.insertInto('draft_entries').values({ document, client, place, text, label }).execute()
}

const update = async (trx: Trx, row: DraftTable, to: Partial<DraftTable>): Promise<DraftTable> =>
  trx
    .updateTable('drafts')
    .set(to)
    .where('document', '=', row.document)
    .where('client', '=', row.client)
    .returningAll()
    .executeTakeFirstOrThrow()

/** A new draft: what it begins from, so that undo comes back to it, and what was written. */
const begin = async (trx: Trx, sequence: number, wanted: Autosave): Promise<DraftTable> => {
  const { document, client, base, text, label, at } = wanted
  const start = base === null ? text : (await revisionRow(trx, base)).text
  const position = start === text ? 0 : 1
  const row: DraftTable = {
    document,
    client,
    base,
    number: 1,
    position,
    closed: 0,
    updated: at,
    touched: sequence,
  }
  await trx.insertInto('drafts').values(row).execute()
  await putEntry(trx, row, 0, { text: start, label: '' })
  if (position === 1) await putEntry(trx, row, 1, { text, label })
  return row
}

/** Entries in front of the new ones, which what was undone gives way to. */
const append = async (trx: Trx, row: DraftTable, entries: readonly Entry[]): Promise<number> => {
  const { document, client } = row
  const mine = trx.deleteFrom('draft_entries').where('document', '=', document).where('client', '=', client)
  await mine.where('place', '>', row.position).execute()
  let place = row.position
  for (const entry of entries) {
    place++
    await putEntry(trx, row, place, entry)
  }
  await mine.where('place', '<=', place - KEPT_ENTRIES).execute()
  return place
}

const goOn = async (
  trx: Trx,
  sequence: number,
  row: DraftTable,
  { base, text, label, at }: Autosave,
): Promise<DraftTable> => {
  const current = await textOf(trx, row)
  const entries: Entry[] = []
  // Put away, and begun again from another revision.
  const again = row.closed === 1 && base !== row.base
  if (again && base !== null) {
    const start = (await revisionRow(trx, base)).text
    if (start !== current.text) entries.push({ text: start, label: 'begin again' })
  }
  if ((entries.at(-1) ?? current).text !== text) entries.push({ text, label })
  const position = entries.length === 0 ? row.position : await append(trx, row, entries)
  const from = again ? { base } : {}
  return update(trx, row, {
    ...from,
    number: row.number + 1,
    position,
    closed: 0,
    updated: at,
    touched: sequence,
  })
}

export const autosave = (engine: Engine, wanted: Autosave): Promise<Answer<Draft>> =>
  write(engine, async (trx, sequence) => {
    const { document, client, number, text, label, at } = wanted
    checkId(document, 'the id of the document')
    checkId(client, 'the id of the client')
    checkInstant(at, 'the time of the edit')
    checkText(text, 'the text', MAX_TEXT)
    checkText(label, 'the name of the edit', MAX_LABEL)
    const row = await findDraft(trx, document, client)
    if (row === undefined)
      return number === 0 ? draftOf(trx, await begin(trx, sequence, wanted)) : refuseStaleDraft()
    if (row.number === number) return draftOf(trx, await goOn(trx, sequence, row, wanted))
    // The same write once more, after a lost answer.
    if (row.number === number + 1 && (await textOf(trx, row)).text === text) return draftOf(trx, row)
    return refuseStaleDraft()
  })

/** Moves within a draft that the client has seen last. */
const moveDraft = (
  engine: Engine,
  { document, client, number, at }: EditMove,
  to: (trx: Trx, row: DraftTable) => Promise<Partial<DraftTable>>,
): Promise<Answer<Draft>> =>
  write(engine, async (trx, sequence) => {
    checkInstant(at, 'the time of the edit')
    const row = await findDraft(trx, document, client)
    if (row === undefined) return refuse('unknown', `This window has no edit of ${document} in progress.`)
    if (row.number !== number) return refuseStaleDraft()
    const moved = await to(trx, row)
    return draftOf(
      trx,
      await update(trx, row, { ...moved, number: number + 1, updated: at, touched: sequence }),
    )
  })

const by =
  (distance: 1 | -1) =>
  async (trx: Trx, row: DraftTable): Promise<Partial<DraftTable>> => {
    const position = row.position + distance
    if ((await entryAt(trx, row, position)) === undefined)
      return refuse(
        'nothing left',
        distance < 0 ? 'This edit is back where it began.' : 'There is nothing to do again in this edit.',
      )
    return { position }
  }

export const undoEdit = (engine: Engine, edit: EditMove) => moveDraft(engine, edit, by(-1))
export const redoEdit = (engine: Engine, edit: EditMove) => moveDraft(engine, edit, by(1))
export const closeDraft = (engine: Engine, edit: EditMove) =>
  moveDraft(engine, edit, async () => ({ closed: 1 }))

export const draft = (engine: Engine, document: string, client: string): Promise<Answer<Draft | null>> =>
  read(engine, async (trx) => {
    const row = await findDraft(trx, document, client)
    return row === undefined ? null : draftOf(trx, row)
  })

export const drafts = (engine: Engine, document?: string): Promise<Answer<readonly Draft[]>> =>
  read(engine, async (trx) => {
    const open = trx.selectFrom('drafts').selectAll().where('closed', '=', 0).orderBy('touched')
    const rows = await (document === undefined ? open : open.where('document', '=', document)).execute()
    const found: Draft[] = []
    for (const row of rows) found.push(await draftOf(trx, row))
    return found
  })
