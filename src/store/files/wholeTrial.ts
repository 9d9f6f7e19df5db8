import { wholeTrialText } from '#proof/trial/withLog.ts'
import { revisionRow, type Trx } from '../documents/rows.ts'
import type { DocumentTable } from '../tables.ts'

/** A trial as a whole file: its text as it counts, and what phones logged beside it. Null: its text is no trial's. */
export const wholeTrial = async (
  trx: Trx,
  { id, head }: Pick<DocumentTable, 'id' | 'head'>,
): Promise<string | null> => {
  const { text } = await revisionRow(trx, head)
  const logged = await trx.selectFrom('events').select('body').where('trial', '=', id).execute()
  return wholeTrialText(text, logged)
}
