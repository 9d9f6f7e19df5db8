import type { Step } from '../documents/journal.ts'
import { findDraft, refuseStaleDraft, textOf } from './rows.ts'

/**
 * A draft goes on from the revision it was saved as, with all its undo. Its text is the one that is saved,
 * or another window has written meanwhile.
 */
export const followSave = async (
  { trx, act, sequence }: Step,
  saved: {
    readonly document: string
    readonly revision: string
    readonly text: string
    readonly number: number
  },
): Promise<void> => {
  const { document, revision, text, number } = saved
  const row = await findDraft(trx, document, act.client)
  if (row === undefined || row.number !== number || (await textOf(trx, row)).text !== text)
    return refuseStaleDraft()
  await trx
    .updateTable('drafts')
    .set({ base: revision, number: number + 1, updated: act.at, touched: sequence })
    .where('document', '=', document)
    .where('client', '=', act.client)
    .execute()
}
