import { formatTrialFile } from '#proof/trial/format.ts'
import { type BurnLog, writtenLog } from '#proof/trial/log.ts'
import type { TrialFile } from '#proof/trial/schema.ts'
import { isOneBurn, type TrialWords, toldAgain } from '#proof/trial/toldAgain.ts'
import { addRevision } from '../documents/add.ts'
import { move, type Step } from '../documents/journal.ts'
import { documentRow, headOf, revisionRow, type Trx } from '../documents/rows.ts'
import { derivedId } from '../hash.ts'
import type { DocumentTable } from '../tables.ts'
import type { Arrivals } from './arrivals.ts'
import { wholeTrial } from './wholeTrial.ts'

const wordsOf = (text: string | null): TrialWords | null => {
  try {
    const said: unknown = JSON.parse(text ?? 'null')
    return typeof said === 'object' && said !== null && !Array.isArray(said) ? (said as TrialWords) : null
  } catch {
    return null
  }
}

/** A trial of the workshop by its log. */
export interface BurnHere {
  readonly row: DocumentTable
  /** What its text says and what phones noted beside it. */
  readonly log: BurnLog
}

const burnOf = async (trx: Trx, row: DocumentTable): Promise<BurnHere> => ({
  row,
  log: writtenLog(wordsOf(await wholeTrial(trx, row))),
})

/** Trials of the workshop, the first made first. */
export const burnsHere = async (trx: Trx): Promise<BurnHere[]> => {
  const rows = await trx
    .selectFrom('documents')
    .selectAll()
    .where('kind', '=', 'trial')
    .where('deleted', '=', 0)
    .orderBy('place')
    .execute()
  const burns: BurnHere[] = []
  for (const row of rows) burns.push(await burnOf(trx, row))
  return burns
}

/** The same list after a trial was made or has gone on. */
export const burnsWith = async (trx: Trx, burns: readonly BurnHere[], id: string): Promise<BurnHere[]> => {
  const now = await burnOf(trx, await documentRow(trx, id))
  const known = burns.some(({ row }) => row.id === id)
  return known ? burns.map((burn) => (burn.row.id === id ? now : burn)) : [...burns, now]
}

/** The burn that a file tells of, by the entries of its log; null: none here. */
export const burnTold = (file: TrialFile, burns: readonly BurnHere[]): BurnHere | null =>
  burns.find(({ log }) => isOneBurn(log, writtenLog(file))) ?? null

const MOST_NAMED = 6
const named = (keys: readonly string[]): string =>
  keys.length > MOST_NAMED
    ? `${keys.slice(0, MOST_NAMED).join(', ')} and ${keys.length - MOST_NAMED} more`
    : keys.join(', ')

const entriesWords = (entries: number): string =>
  entries === 1
    ? 'one entry of its log was new and is in it now'
    : `${entries} entries of its log were new and are in it now`

/** Takes into a burn that is here what a file tells of it beyond that: a revision on top, which can be undone. */
export const takeTelling = async (
  step: Step,
  arrivals: Arrivals,
  which: string,
  { row, log }: BurnHere,
  file: TrialFile,
  note: string,
): Promise<void> => {
  const { trx, act } = step
  const { text } = await revisionRow(trx, row.head)
  const here = wordsOf(text)
  if (here === null) return
  const earlier = await trx.selectFrom('revisions').select('text').where('document', '=', row.id).execute()
  const before = earlier.map((one) => wordsOf(one.text)).filter((words) => words !== null)
  const { words, entries, filled, apart } = toldAgain(here, log, file as unknown as TrialWords, before)
  const is = `${which} is the burn “${row.name}”, by the entries of its log`
  const left =
    apart.length === 0
      ? []
      : [
          `told otherwise in the file, and left here as it stands: ${named(apart)} (to have the file’s words instead, take the burn away and bring the file in again)`,
        ]
  if (words === null) {
    arrivals.known.push(headOf(row))
    if (left.length > 0) arrivals.remarks.push(`${is}; ${left.join('; ')}.`)
    return
  }
  const revision = derivedId(act.id, String(step.changes.length), 'revision')
  await addRevision(trx, {
    id: revision,
    document: row.id,
    text: formatTrialFile(words as unknown as TrialFile),
    note,
    created: act.at,
    parents: [row.head],
  })
  arrivals.renewed.push(await move(step, row, { head: revision }))
  const came = [
    ...(entries > 0 ? [entriesWords(entries)] : []),
    ...(filled.length > 0 ? [`filled in: ${named(filled)}`] : []),
  ]
  arrivals.remarks.push(`${is}: ${[...came, ...left].join('; ')}.`)
}
