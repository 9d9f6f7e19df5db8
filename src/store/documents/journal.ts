import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import type { Engine } from '../engine/engine.ts'
import { write } from '../engine/transaction.ts'
import { sha256 } from '../hash.ts'
import { checkAct } from '../limits.ts'
import type { ChangeTable, DocumentTable, StepTable } from '../tables.ts'
import type { Act, DocumentHead } from '../workshop.ts'
import { headOf, type Trx } from './rows.ts'

/** What can change about a document; its revisions cannot. */
export interface State {
  readonly name: string
  readonly head: string
  readonly deleted: boolean
}

/** A step while it is being done. */
export interface Step {
  readonly trx: Trx
  readonly act: Act
  readonly sequence: number
  readonly changes: Omit<ChangeTable, 'step' | 'place'>[]
}

/** What one step did, for the journal, and what it answers. */
export interface Done<T> {
  readonly label: string
  readonly value: T
}

export const stateOf = (row: DocumentTable): State => ({
  name: row.name,
  head: row.head,
  deleted: row.deleted === 1,
})

export const noteChange = (step: Step, document: string, before: State, after: State): void => {
  step.changes.push({
    document,
    name_before: before.name,
    name_after: after.name,
    head_before: before.head,
    head_after: after.head,
    deleted_before: before.deleted ? 1 : 0,
    deleted_after: after.deleted ? 1 : 0,
  })
}

/** Changes a document within a step. */
export const move = async (step: Step, row: DocumentTable, to: Partial<State>): Promise<DocumentHead> => {
  const before = stateOf(row)
  const after = { ...before, ...to }
  noteChange(step, row.id, before, after)
  const moved = await step.trx
    .updateTable('documents')
    .set({
      name: after.name,
      head: after.head,
      deleted: after.deleted ? 1 : 0,
      version: row.version + 1,
      touched: step.sequence,
    })
    .where('id', '=', row.id)
    .returningAll()
    .executeTakeFirstOrThrow()
  return headOf(moved)
}

export const keepStep = async (
  { trx, act, sequence, changes }: Step,
  own: Pick<StepTable, 'kind' | 'label' | 'fingerprint' | 'of'>,
): Promise<void> => {
  await trx
    .insertInto('steps')
    .values({ id: act.id, sequence, client: act.client, created: act.at, undone_by: null, ...own })
    .execute()
  const rows = changes.map((change, place) => ({ step: act.id, place, ...change }))
  // A thousand at a time: a statement takes so many values and no more.
  for (let from = 0; from < rows.length; from += 1000)
    await trx
      .insertInto('changes')
      .values(rows.slice(from, from + 1000))
      .execute()
}

/** Was this very thing done already? Throws where the id was used for another. */
export const doneBefore = async (trx: Trx, act: Act, fingerprint: string): Promise<StepTable | null> => {
  const before = await trx.selectFrom('steps').selectAll().where('id', '=', act.id).executeTakeFirst()
  if (before === undefined) return null
  if (before.fingerprint !== fingerprint)
    refuse(
      'conflict',
      `The step ${act.id} was done already, and it was another one. Nothing was changed. Each step wants an id of its own.`,
    )
  return before
}

export const fingerprintOf = (request: unknown): string => sha256(JSON.stringify(request))

/**
 * Does something that can be undone, once. `request` is all that was asked for; `again` gives the answer
 * when the same step is asked for a second time. A step that changed nothing leaves nothing to undo.
 */
export const doStep = <T>(
  engine: Engine,
  act: Act,
  request: unknown,
  work: (step: Step) => Promise<Done<T>>,
  again: (trx: Trx) => Promise<T>,
): Promise<Answer<T>> =>
  write(engine, async (trx, sequence) => {
    checkAct(act)
    const fingerprint = fingerprintOf(request)
    if ((await doneBefore(trx, act, fingerprint)) !== null) return again(trx)
    const step: Step = { trx, act, sequence, changes: [] }
    const { label, value } = await work(step)
    if (step.changes.length > 0) await keepStep(step, { kind: 'do', label, fingerprint, of: null })
    return value
  })
