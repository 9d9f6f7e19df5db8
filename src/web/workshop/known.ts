import type { DocumentHead, WorkshopAbout } from '#wire/documents.ts'
import type { Draft } from '#wire/drafts.ts'
import type { UndoState } from '#wire/undo.ts'
import { type Cell, createCell, derivedCell } from '../cell/cell.ts'
import type { Keep } from './keep.ts'
import { client } from './link.ts'

// What this page knows of its workshop, and how it learns more.

const heads = createCell<ReadonlyMap<string, DocumentHead>>(new Map())
const openDrafts = createCell<readonly Draft[]>([])
const undoable = createCell<UndoState>({ undo: null, redo: null })
const arrived = createCell<'looking' | 'here' | 'from this browser'>('looking')
const aboutCell = createCell<WorkshopAbout | null>(null)

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

/** What workshop this is, once it has answered. */
export const about: Cell<WorkshopAbout | null> = aboutCell

export const headOf = (document: string): DocumentHead | null => heads.get().get(document) ?? null

const byFirst = (a: DocumentHead, b: DocumentHead): number =>
  Date.parse(a.created) - Date.parse(b.created) || (a.id < b.id ? -1 : 1)

let sequence = 0

/** Number of the last change that this page has heard of. */
export const heardOf = (): number => sequence

export const heardUpTo = (last: number): void => {
  sequence = last
}

/** Takes news of documents into the list and into this browser. */
export const learn = async (keep: Keep, news: readonly DocumentHead[]): Promise<void> => {
  if (news.length === 0) return
  const all = new Map(heads.get())
  for (const head of news) all.set(head.id, head)
  heads.set(new Map([...all.values()].sort(byFirst).map((head) => [head.id, head])))
  const trx = keep.transaction('heads', 'readwrite')
  for (const head of news) void trx.store.put(head)
  await trx.done
}

export const askDrafts = async (): Promise<void> => {
  const answer = await client.call('drafts', {})
  if (answer.ok) openDrafts.set(answer.value)
}

export const askUndo = async (window: string): Promise<void> => {
  const answer = await client.call('undoState', { client: window })
  if (answer.ok) undoable.set(answer.value)
}

/** All that is there, after a start or after the line was lost. */
export const look = async (keep: Keep, window: string): Promise<boolean> => {
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

/** The list as this browser remembers it, while the workshop does not answer. */
export const recall = async (keep: Keep): Promise<void> => {
  const kept = await keep.getAll('heads')
  heads.set(new Map(kept.sort(byFirst).map((head) => [head.id, head])))
  arrived.set('from this browser')
}
