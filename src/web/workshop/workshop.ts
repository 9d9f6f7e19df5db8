import type { Answer } from '#wire/answer.ts'
import type { CallName, RequestOf, ValueOf } from '#wire/calls.ts'
import type { Act, DocumentHead, OpenDocument, Revision, WorkshopAbout } from '#wire/documents.ts'
import type { Door } from '#wire/door.ts'
import type { Draft } from '#wire/drafts.ts'
import type { UndoState } from '#wire/undo.ts'
import type { UploadName, UploadRequestOf, UploadValueOf } from '#wire/uploads.ts'
import { type Cell, createCell, derivedCell } from '../cell/cell.ts'
import { type Keep, type Outgoing, openKeep, type Refused } from './keep.ts'
import { client, linkDown, linkState, setLink } from './link.ts'
import { newId, now } from './names.ts'
import { type Outbox, openOutbox } from './outbox.ts'
import { watchWorkshop } from './watching.ts'
import { claimWindow } from './window.ts'

/** Something on its way to the workshop. */
export interface Sent<T> {
  /** It is safe in this browser now, and gets there sooner or later. */
  readonly safe: Promise<void>
  /** What the workshop said, when it has said it. */
  readonly answer: Promise<Answer<T>>
}

/** What this page needs to be one window of one workshop. */
export interface Station {
  readonly keep: Keep
  readonly outbox: Outbox
  readonly window: string
}

const LAST_WORKSHOP = 'tinwright.workshop'

const heads = createCell<ReadonlyMap<string, DocumentHead>>(new Map())
const openDrafts = createCell<readonly Draft[]>([])
const undoable = createCell<UndoState>({ undo: null, redo: null })
const arrived = createCell<'looking' | 'here' | 'from this browser'>('looking')
const doorCell = createCell<Door | null>(null)
const aboutCell = createCell<WorkshopAbout | null>(null)
const refusedCell = createCell<readonly Refused[]>([])

const alive = (): readonly DocumentHead[] => [...heads.get().values()].filter(({ deleted }) => !deleted)

/** Everything in the workshop that was not taken away, in the order in which it was first written. */
export const documents: Cell<readonly DocumentHead[]> = derivedCell([heads], alive)

/** What was taken away and can come back. */
export const takenAway: Cell<readonly DocumentHead[]> = derivedCell([heads], () =>
  [...heads.get().values()].filter(({ deleted }) => deleted),
)

/** Whether `documents` is the workshop's own list, or what this browser remembers of it. */
export const documentsFrom: Cell<'looking' | 'here' | 'from this browser'> = arrived

/** Edits in progress of all windows. */
export const drafts: Cell<readonly Draft[]> = openDrafts

/** What this window's undo and redo would do in the workshop: names, saves, what was taken away. */
export const undoState: Cell<UndoState> = undoable

/** How this device stands to the bench. */
export const door: Cell<Door | null> = doorCell

/** What workshop this is, once it has answered. */
export const about: Cell<WorkshopAbout | null> = aboutCell

/** Calls the workshop refused after their window had gone; nobody was told yet. */
export const refusals: Cell<readonly Refused[]> = refusedCell

export const headOf = (document: string): DocumentHead | null => heads.get().get(document) ?? null

const settledListeners = new Set<(sent: Outgoing, answer: Answer<unknown>) => void | Promise<void>>()

/** Calls back for every answer to something that was sent from this browser. */
export const onSettled = (
  listener: (sent: Outgoing, answer: Answer<unknown>) => void | Promise<void>,
): void => void settledListeners.add(listener)

const byFirst = (a: DocumentHead, b: DocumentHead): number =>
  Date.parse(a.created) - Date.parse(b.created) || (a.id < b.id ? -1 : 1)

const remembered = (): string | null => {
  try {
    return localStorage.getItem(LAST_WORKSHOP)
  } catch {
    return null
  }
}

const remember = (workshop: string): void => {
  try {
    localStorage.setItem(LAST_WORKSHOP, workshop)
  } catch {
    // Without it the page cannot open offline, no more.
  }
}

let sequence = 0
let ours: string | null = null

const learn = async (keep: Keep, news: readonly DocumentHead[]): Promise<void> => {
  if (news.length === 0) return
  const all = new Map(heads.get())
  for (const head of news) all.set(head.id, head)
  heads.set(new Map([...all.values()].sort(byFirst).map((head) => [head.id, head])))
  const trx = keep.transaction('heads', 'readwrite')
  for (const head of news) void trx.store.put(head)
  await trx.done
}

const askDrafts = async (): Promise<void> => {
  const answer = await client.call('drafts', {})
  if (answer.ok) openDrafts.set(answer.value)
}

const askUndo = async (window: string): Promise<void> => {
  const answer = await client.call('undoState', { client: window })
  if (answer.ok) undoable.set(answer.value)
}

/** All that is there, after a start or after the line was lost. */
const look = async ({ keep, window }: Pick<Station, 'keep' | 'window'>): Promise<boolean> => {
  const about = await client.call('about', {})
  if (!about.ok) return false
  aboutCell.set(about.value)
  const list = await client.call('list', { deleted: true })
  if (!list.ok) return false
  sequence = about.value.sequence
  const trx = keep.transaction('heads', 'readwrite')
  void trx.store.clear()
  for (const head of list.value) void trx.store.put(head)
  await trx.done
  heads.set(new Map(list.value.map((head) => [head.id, head])))
  arrived.set('here')
  await Promise.all([askDrafts(), askUndo(window)])
  return true
}

/** Asks who answers under this address, and sets the link by it. */
const whoIsThere = async (): Promise<boolean> => {
  const about = await client.call('about', {})
  if (!about.ok) {
    if (about.refusal.code !== 'not paired') linkDown()
    return false
  }
  ours ??= about.value.id
  if (about.value.id !== ours) {
    setLink({
      kind: 'another',
      sentence: `Another workshop answers now (${about.value.place}). What was not sent to the one on this page stays in this browser for it. Load the page again to see the other one.`,
    })
    return false
  }
  setLink({ kind: 'up' })
  return true
}

/** Between two looks whether the workshop is there. [ms] */
const LOOK_AGAIN = 1500

const reachable = async (failed: unknown): Promise<void> => {
  let sure = failed === null && linkState.get().kind === 'up'
  while (!sure) {
    sure = await whoIsThere()
    if (sure) return
    await new Promise<void>((resolve) => {
      const stop = linkState.subscribe(() => linkState.get().kind === 'up' && done())
      const done = (): void => {
        stop()
        resolve()
      }
      setTimeout(done, LOOK_AGAIN)
    })
  }
}

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
  if (!(await whoIsThere())) ours = remembered()
  if (ours !== null) remember(ours)
  const [keep, window] = await Promise.all([keepOf(ours ?? 'unknown'), claimWindow()])
  if (linkState.get().kind !== 'up') {
    const kept = await keep.getAll('heads')
    heads.set(new Map(kept.sort(byFirst).map((head) => [head.id, head])))
    arrived.set('from this browser')
  }
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
        if (sent.name !== 'autosave') await look(station)
      }
      void askUndo(window)
    },
  })
  const station: Station = { keep, outbox, window }
  let seen = linkState.get().kind === 'up' && (await look(station))
  watchWorkshop({
    since: () => sequence,
    opened: async () => {
      if (!(await whoIsThere())) return
      if (!seen) seen = await look(station)
      outbox.nudge()
    },
    lost: () => {
      // Set back to an older copy, say: everything is looked at anew.
      sequence = 0
      seen = false
    },
    changes: async (changes) => {
      sequence = changes.sequence
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

/** What a call will do to the list, shown before the workshop has heard of it. */
const ahead = (name: CallName | UploadName, request: unknown): DocumentHead | null => {
  if (name === 'create') {
    const { act, wanted } = request as RequestOf<'create'>
    return {
      id: wanted.id,
      kind: wanted.kind,
      name: wanted.name,
      head: wanted.revision,
      deleted: false,
      version: 0,
      aboutDocument: wanted.aboutDocument ?? null,
      aboutRevision: wanted.aboutRevision ?? null,
      created: act.at,
      touched: sequence,
    }
  }
  if (name !== 'rename' && name !== 'remove' && name !== 'restore') return null
  const there = headOf((request as { readonly document: string }).document)
  if (there === null) return null
  // What is done next, before the answer, hands back the version that this will make; 0: the workshop has not heard of it.
  const version = there.version === 0 ? 0 : there.version + 1
  if (name === 'rename') return { ...there, version, name: (request as RequestOf<'rename'>).name }
  return { ...there, version, deleted: name === 'remove' }
}

/** A revision that is on its way is as good as one that was seen. */
export const keepRevision = async (revision: Omit<Revision, 'hash'>): Promise<void> => {
  const { keep } = await station()
  await keep.put('revisions', { ...revision, hash: '' })
}

/** What a call will make is shown, and can be opened, before the workshop has heard of it. */
const keepAhead = async (keep: Keep, name: CallName | UploadName, request: unknown): Promise<void> => {
  const head = ahead(name, request)
  if (name === 'create') {
    const { act, wanted } = request as RequestOf<'create'>
    const { id: document, revision: id, text, note, parents = [] } = wanted
    // Before anybody hears of its head: whoever does asks for this very revision.
    await keepRevision({ id, document, parents, text, note, created: act.at })
  }
  if (head !== null) await learn(keep, [head])
}

const layIn = async (
  entry: Omit<Outgoing, 'client'>,
): Promise<{ readonly key: number; readonly outbox: Outbox }> => {
  const { keep, outbox, window } = await station()
  await keepAhead(keep, entry.name, entry.request)
  return { key: await keep.add('outbox', { ...entry, client: window }), outbox }
}

const sent = <T>(entry: Promise<{ readonly key: number; readonly outbox: Outbox }>): Sent<T> => {
  const answer = entry.then(({ key, outbox }) => {
    const said = outbox.answerTo(key)
    outbox.nudge()
    return said as Promise<Answer<T>>
  })
  return { safe: entry.then(() => undefined), answer }
}

/** The workshop behind the page. */
export const workshop = {
  /** Asks for something. Never throws; a refusal tells why in a sentence. */
  ask: client.call,

  /** Does something: kept in this browser first, sent in order, sent again until it is answered. */
  write: <N extends CallName>(name: N, request: RequestOf<N>): Sent<ValueOf<N>> =>
    sent(layIn({ name, request })),

  /** The same with bytes: a photo. */
  upload: <N extends UploadName>(name: N, request: UploadRequestOf<N>, bytes: Blob): Sent<UploadValueOf<N>> =>
    sent(layIn({ name, request, bytes })),

  /** A revision by its id, from this browser where it was seen before. */
  revision: async (id: string): Promise<Answer<Revision>> => {
    const { keep } = await station()
    const kept = await keep.get('revisions', id)
    if (kept !== undefined) return { ok: true, value: kept }
    const answer = await client.call('revision', { id })
    if (answer.ok) await keep.put('revisions', answer.value)
    return answer
  },

  /** A document with the revision that counts; from this browser while the workshop does not answer. */
  open: async (document: string): Promise<Answer<OpenDocument>> => {
    const { keep } = await station()
    const answer = await client.call('open', { document })
    if (answer.ok) {
      await keep.put('revisions', answer.value.revision)
      return answer
    }
    if (answer.refusal.code !== 'unreachable') return answer
    const head = headOf(document)
    const revision = head === null ? undefined : await keep.get('revisions', head.head)
    return head === null || revision === undefined
      ? answer
      : { ok: true, value: { document: head, revision } }
  },
}

/** The maker has read it. */
export const forgetRefusal = async (key: number): Promise<void> => {
  const { keep } = await station()
  await keep.delete('refused', key)
  refusedCell.set(await keep.getAll('refused'))
}
