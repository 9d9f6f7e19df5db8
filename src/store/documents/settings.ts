import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import type { Engine } from '../engine/engine.ts'
import { read } from '../engine/transaction.ts'
import { derivedId } from '../hash.ts'
import { checkId, checkText, MAX_TEXT } from '../limits.ts'
import type { Act, DocumentHead } from '../workshop.ts'
import { addDocument, addRevision } from './add.ts'
import { doStep, move } from './journal.ts'
import { documentRow, findDocument, headOf, revisionRow } from './rows.ts'

/** A setting is a document whose id is its key: it has a history and an undo like everything else. */
const idOf = (key: string): string => {
  const id = `setting.${key}`
  checkId(id, 'the key of a setting')
  return id
}

export const setting = (
  engine: Engine,
  key: string,
): Promise<Answer<{ readonly text: string; readonly head: string } | null>> =>
  read(engine, async (trx) => {
    const row = await findDocument(trx, idOf(key))
    if (row === undefined || row.deleted === 1) return null
    return { text: (await revisionRow(trx, row.head)).text, head: row.head }
  })

export const setSetting = (
  engine: Engine,
  act: Act,
  key: string,
  base: string | null,
  text: string,
): Promise<Answer<DocumentHead>> =>
  doStep(
    engine,
    act,
    ['setting', key, base, text],
    async (step) => {
      const { trx } = step
      const document = idOf(key)
      checkText(text, `the setting ${key}`, MAX_TEXT)
      const row = await findDocument(trx, document)
      const seen = row === undefined || row.deleted === 1 ? null : row.head
      if (seen !== base)
        refuse(
          'conflict',
          `The setting ${key} was changed elsewhere since. Nothing was changed. Read it again.`,
        )
      const revision = derivedId(act.id, 'setting', key)
      const own = { kind: 'setting', about_document: null, about_revision: null, created: act.at }
      const value =
        row === undefined
          ? await addDocument(step, { id: document, name: key, head: revision, ...own })
          : await move(step, row, { head: revision, deleted: false })
      const parents = row === undefined ? [] : [row.head]
      await addRevision(trx, { id: revision, document, text, note: '', created: act.at, parents })
      return { label: `set ${key}`, value }
    },
    async (trx) => headOf(await documentRow(trx, idOf(key))),
  )
