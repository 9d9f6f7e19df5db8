import type { Answer } from '#wire/answer.ts'
import type { Act } from '#wire/documents.ts'
import type { Door } from '#wire/door.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { type Keep, type Outgoing, openKeep, type Refused } from './keep.ts'
import { askDrafts, askUndo, heardOf, heardUpTo, learn, look, recall } from './known.ts'
import { client, linkState, setLink } from './link.ts'
import { newId, now } from './names.ts'
import { type Outbox, openOutbox } from './outbox.ts'
import { watchWorkshop } from './watching.ts'
import { reachable, whoIsThere, workshopHere } from './whoAnswers.ts'
import { claimWindow } from './window.ts'

/** What this page needs to be one window of one workshop. */
export interface Station {
  readonly keep: Keep
  readonly outbox: Outbox
  readonly window: string
}

const doorCell = createCell<Door | null>(null)
const refusedCell = createCell<readonly Refused[]>([])

/** How this device stands to the bench. */
export const door: Cell<Door | null> = doorCell

/** Calls the workshop refused after their window had gone; nobody was told yet. */
export const refusals: Cell<readonly Refused[]> = refusedCell

const settledListeners = new Set<(sent: Outgoing, answer: Answer<unknown>) => void | Promise<void>>()

/** Calls back for every answer to something that was sent from this browser. */
export const onSettled = (
  listener: (sent: Outgoing, answer: Answer<unknown>) => void | Promise<void>,
): void => void settledListeners.add(listener)

const keepOf = async (workshopId: string): Promise<Keep> => {
  try {
    return await openKeep(workshopId)
  } catch (fault) {
    setLink({
      kind: 'no keep',
      sentence:
        'This browser gives the bench no room to keep anything in (a private window, or a full drive?), so nothing done here would be safe. Open it in an ordinary window, or make room and load it again.',
    })
    throw fault
  }
}

const start = async (): Promise<Station> => {
  const greeting = await client.call('door', {})
  if (greeting.ok) doorCell.set(greeting.value)
  if (greeting.ok && !greeting.value.letIn) {
    setLink({ kind: 'not let in', sentence: 'This device has not been let into the workshop yet.' })
    return new Promise(() => undefined)
  }
  const ours = await workshopHere()
  const [keep, window] = await Promise.all([keepOf(ours ?? 'unknown'), claimWindow()])
  if (linkState.get().kind !== 'up') await recall(keep)
  refusedCell.set(await keep.getAll('refused'))
  const outbox = openOutbox({
    keep,
    window,
    reachable,
    settled: async (sent, answer) => {
      for (const listener of settledListeners) await listener(sent, answer)
      if (!answer.ok) {
        refusedCell.set(await keep.getAll('refused'))
        // What was shown ahead of the answer was not to be.
        if (sent.name !== 'autosave') await look(keep, window)
      }
      void askUndo(window)
    },
  })
  const station: Station = { keep, outbox, window }
  let seen = linkState.get().kind === 'up' && (await look(keep, window))
  watchWorkshop({
    since: heardOf,
    opened: async () => {
      if (!(await whoIsThere())) return
      if (!seen) seen = await look(keep, window)
      outbox.nudge()
    },
    lost: () => {
      // Set back to an older copy, say: everything is looked at anew.
      heardUpTo(0)
      seen = false
    },
    changes: async (changes) => {
      heardUpTo(changes.sequence)
      await learn(keep, changes.documents)
      if (changes.drafts.length > 0) await askDrafts()
    },
  })
  outbox.nudge()
  return station
}

let started: Promise<Station> | null = null

/** This page's place in the workshop; the first to ask opens it. */
export const station = (): Promise<Station> => {
  started ??= start()
  return started
}

/** Who does something now, in this window. */
export const newAct = async (): Promise<Act> => ({
  id: newId(),
  client: (await station()).window,
  at: now(),
})

/** The maker has read it. */
export const forgetRefusal = async (key: number): Promise<void> => {
  const { keep } = await station()
  await keep.delete('refused', key)
  refusedCell.set(await keep.getAll('refused'))
}
