import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import { documentRow, type Trx } from '../documents/rows.ts'
import type { Engine } from '../engine/engine.ts'
import { read, write } from '../engine/transaction.ts'
import { checkId, checkInstant, checkText, MAX_EVENT, MAX_EVENTS } from '../limits.ts'
import type { EventTable } from '../tables.ts'
import type { EventBatch, NewEvent, TrialEvent } from '../workshop.ts'

const eventOf = (row: EventTable): TrialEvent => ({
  id: row.id,
  trial: row.trial,
  at: row.at,
  body: row.body,
  replaces: row.replaces,
  withdrawn: row.withdrawn === 1,
  client: row.client,
  created: row.created,
  sequence: row.sequence,
})

const check = ({ id, at, body, replaces, withdrawn }: NewEvent): void => {
  checkId(id, 'the id of an event')
  checkInstant(at, `the time of the event ${id}`)
  checkText(body, `the event ${id}`, MAX_EVENT)
  if (replaces !== undefined) checkId(replaces, `the event that ${id} replaces`)
  if (withdrawn === true && replaces === undefined)
    refuse('bad input', `The event ${id} takes nothing back: it names no event that it replaces.`)
}

const trialRow = async (trx: Trx, trial: string): Promise<void> => {
  const { kind, name } = await documentRow(trx, trial)
  if (kind !== 'trial') refuse('bad input', `“${name}” is no trial. Nothing was changed.`)
}

const find = (trx: Trx, id: string): Promise<EventTable | undefined> =>
  trx.selectFrom('events').selectAll().where('id', '=', id).executeTakeFirst()

const isSame = (row: EventTable, trial: string, event: NewEvent): boolean =>
  row.trial === trial &&
  row.at === event.at &&
  row.body === event.body &&
  row.replaces === (event.replaces ?? null) &&
  row.withdrawn === (event.withdrawn === true ? 1 : 0)

/** Keeps an event once, whoever brings it and however often. */
export const keepEvent = async (
  trx: Trx,
  sequence: number,
  { trial, client, at }: Omit<EventBatch, 'events'>,
  event: NewEvent,
): Promise<{ readonly event: TrialEvent; readonly fresh: boolean }> => {
  check(event)
  const known = await find(trx, event.id)
  if (known !== undefined) {
    if (!isSame(known, trial, event))
      refuse(
        'conflict',
        `There is an event ${event.id} already, and it says something else. Nothing of this batch was kept. Log a correction under an id of its own.`,
      )
    return { event: eventOf(known), fresh: false }
  }
  const row: EventTable = {
    id: event.id,
    trial,
    at: event.at,
    body: event.body,
    replaces: event.replaces ?? null,
    withdrawn: event.withdrawn === true ? 1 : 0,
    client,
    created: at,
    sequence,
  }
  await trx.insertInto('events').values(row).execute()
  return { event: eventOf(row), fresh: true }
}

/**
 * Keeps what is new of a batch and answers with all of it as it is kept. A trial that was taken away in the
 * meantime takes events too: a phone that was out of reach loses nothing.
 */
export const logEvents = (engine: Engine, batch: EventBatch): Promise<Answer<readonly TrialEvent[]>> =>
  write(engine, async (trx, sequence) => {
    checkId(batch.client, 'the id of the client')
    checkInstant(batch.at, 'the time of the batch')
    if (batch.events.length > MAX_EVENTS)
      refuse('too large', `A batch holds up to ${MAX_EVENTS} events. Nothing was changed. Send several.`)
    await trialRow(trx, batch.trial)
    const kept = []
    for (const event of batch.events) kept.push(await keepEvent(trx, sequence, batch, event))
    if (kept.some(({ fresh }) => fresh))
      await trx.updateTable('documents').set({ touched: sequence }).where('id', '=', batch.trial).execute()
    return kept.map(({ event }) => event)
  })

export const events = (engine: Engine, trial: string, since = 0): Promise<Answer<readonly TrialEvent[]>> =>
  read(engine, async (trx) => {
    await trialRow(trx, trial)
    const rows = await trx
      .selectFrom('events')
      .selectAll()
      .where('trial', '=', trial)
      .where('sequence', '>', since)
      .orderBy('sequence')
      .execute()
    return rows.map(eventOf).sort(inOrder)
  })

/** As written; those of one batch by their time, then by id. */
const inOrder = (a: TrialEvent, b: TrialEvent): number =>
  a.sequence - b.sequence || Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : 1)
