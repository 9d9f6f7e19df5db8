import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import type { Engine } from '../engine/engine.ts'
import { read, write } from '../engine/transaction.ts'
import { checkAct } from '../limits.ts'
import type { ChangeTable, DocumentTable, StepTable } from '../tables.ts'
import type { Act, StepView, UndoReport, UndoState } from '../workshop.ts'
import { doneBefore, fingerprintOf, keepStep, move, type State, type Step, stateOf } from './journal.ts'
import { documentRow, headOf, type Trx } from './rows.ts'

type Way = 'undo' | 'redo'

const viewOf = ({ id, label, created }: StepTable): StepView => ({ id, label, created })

/** The newest step of a client that stands. */
const lastDone = (trx: Trx, client: string): Promise<StepTable | undefined> =>
  trx
    .selectFrom('steps')
    .selectAll()
    .where('client', '=', client)
    .where('kind', '=', 'do')
    .where('undone_by', 'is', null)
    .orderBy('sequence', 'desc')
    .limit(1)
    .executeTakeFirst()

/** The oldest step taken back after it: doing something new leaves those before it behind. */
const nextUndone = async (trx: Trx, client: string): Promise<StepTable | undefined> => {
  const last = await lastDone(trx, client)
  return trx
    .selectFrom('steps')
    .selectAll()
    .where('client', '=', client)
    .where('kind', '=', 'do')
    .where('undone_by', 'is not', null)
    .where('sequence', '>', last?.sequence ?? 0)
    .orderBy('sequence')
    .limit(1)
    .executeTakeFirst()
}

const changesOf = (trx: Trx, step: string): Promise<ChangeTable[]> =>
  trx.selectFrom('changes').selectAll().where('step', '=', step).orderBy('place').execute()

const before = (change: ChangeTable): State => ({
  name: change.name_before,
  head: change.head_before,
  deleted: change.deleted_before === 1,
})
const after = (change: ChangeTable): State => ({
  name: change.name_after,
  head: change.head_after,
  deleted: change.deleted_after === 1,
})

/**
 * What has to change to go from one state to the other; a refusal where someone else has changed the same
 * thing since. Who renamed it does not stand in the way of who saved it.
 */
const moveBetween = (row: DocumentTable, from: State, to: State): Partial<State> => {
  const now = stateOf(row)
  const fields = (['name', 'head', 'deleted'] as const).filter((field) => from[field] !== to[field])
  const hidesWork = to.deleted && !from.deleted && now.head !== from.head
  if (hidesWork || fields.some((field) => now[field] !== from[field]))
    refuse(
      'conflict',
      `“${row.name}” was changed elsewhere since, so this cannot be taken back or done again without losing that. Nothing was changed.`,
    )
  return Object.fromEntries(fields.map((field) => [field, to[field]]))
}

const apply = async (step: Step, target: StepTable, way: Way): Promise<void> => {
  const changes = await changesOf(step.trx, target.id)
  for (const change of way === 'undo' ? changes.reverse() : changes) {
    const row = await documentRow(step.trx, change.document)
    const [from, to] = way === 'undo' ? [after(change), before(change)] : [before(change), after(change)]
    await move(step, row, moveBetween(row, from, to))
  }
}

const report = async (trx: Trx, target: StepTable): Promise<UndoReport> => {
  const ids = new Set((await changesOf(trx, target.id)).map(({ document }) => document))
  const documents = []
  for (const id of ids) documents.push(headOf(await documentRow(trx, id)))
  return { step: viewOf(target), documents }
}

const stepRow = (trx: Trx, id: string): Promise<StepTable> =>
  trx.selectFrom('steps').selectAll().where('id', '=', id).executeTakeFirstOrThrow()

const NOTHING = {
  undo: 'There is nothing to take back in this window.',
  redo: 'There is nothing to do again in this window.',
} as const

const go = (engine: Engine, act: Act, way: Way): Promise<Answer<UndoReport>> =>
  write(engine, async (trx, sequence) => {
    checkAct(act)
    const fingerprint = fingerprintOf([way])
    const earlier = await doneBefore(trx, act, fingerprint)
    if (earlier?.of != null) return report(trx, await stepRow(trx, earlier.of))
    const target = await (way === 'undo' ? lastDone(trx, act.client) : nextUndone(trx, act.client))
    if (target === undefined) return refuse('nothing left', NOTHING[way])
    const step: Step = { trx, act, sequence, changes: [] }
    await apply(step, target, way)
    await keepStep(step, { kind: way, label: target.label, fingerprint, of: target.id })
    await trx
      .updateTable('steps')
      .set({ undone_by: way === 'undo' ? act.id : null })
      .where('id', '=', target.id)
      .execute()
    return report(trx, target)
  })

export const undo = (engine: Engine, act: Act): Promise<Answer<UndoReport>> => go(engine, act, 'undo')
export const redo = (engine: Engine, act: Act): Promise<Answer<UndoReport>> => go(engine, act, 'redo')

export const undoState = (engine: Engine, client: string): Promise<Answer<UndoState>> =>
  read(engine, async (trx) => {
    const [back, forth] = [await lastDone(trx, client), await nextUndone(trx, client)]
    return {
      undo: back === undefined ? null : viewOf(back),
      redo: forth === undefined ? null : viewOf(forth),
    }
  })
