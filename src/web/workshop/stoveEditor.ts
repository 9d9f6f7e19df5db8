import { formatStoveFile } from '#stove/document/format.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Answer } from '#wire/answer.ts'
import type { Revision } from '#wire/documents.ts'
import { type Cell, createCell, type OpenCell } from '../cell/cell.ts'
import type { Change, Keeping, Kept, Parent, StoveEditor, StoveState } from '../stove/editor.ts'
import { shown, startOf } from '../stove/shown.ts'
import { keepRevision } from './ahead.ts'
import { openEditLog } from './editLog.ts'
import { findMirror } from './findMirror.ts'
import type { Outgoing } from './keep.ts'
import { documents, headOf } from './known.ts'
import { linkState } from './link.ts'
import {
  BEGIN_AGAIN,
  beginMirror,
  begunAgain,
  isUnsaved,
  type Mirror,
  redoLabel,
  savedAs,
  textNow,
  undoLabel,
} from './mirror.ts'
import { newId, now } from './names.ts'
import { parentOf } from './parentOf.ts'
import { newAct, onSettled, type Station } from './station.ts'
import { looseFileOf, stoveFileOf } from './stoveText.ts'
import { workshop } from './workshop.ts'

/** The bench's own editor of a stove, with what the frame asks of it besides. */
export interface WorkshopEditor extends StoveEditor {
  /** Goes on as a stove of its own with what is here; the one it came from stays as somebody else saved it. */
  readonly keepMine: (name: string) => Promise<Kept>
  /** Goes on from what somebody else saved; what was here is one undo away. */
  readonly takeTheirs: () => Promise<void>
  /** Takes a whole text over, from another window's edit; false when it does not read. */
  readonly takeText: (label: string, text: string) => boolean
}

const refusedWith = (sentence: string): Kept => ({ ok: false, sentence })

/** What the workshop said, or null once it is away: what was done is kept then, and gets there later. */
const answerOrAway = async (answer: Promise<Answer<unknown>>): Promise<Answer<unknown> | null> => {
  let stop = (): void => undefined
  const away = new Promise<null>((resolve) => {
    const look = (): void => {
      if (linkState.get().kind === 'down') resolve(null)
    }
    stop = linkState.subscribe(look)
    look()
  })
  const first = await Promise.race([answer, away])
  stop()
  return first
}

export const openStoveEditor = async (
  station: Station,
  id: string,
): Promise<WorkshopEditor | { readonly sentence: string }> => {
  const { keep, outbox, window } = station
  const opened = await workshop.open(id)
  if (!opened.ok) return { sentence: opened.refusal.sentence }
  const { document, revision: first } = opened.value
  const nameNow = (): string => headOf(id)?.name ?? document.name
  const begun = await findMirror(station, id, first)
  const read = stoveFileOf(textNow(begun), nameNow())
  if ('sentence' in read) return read

  const log = openEditLog(station, begun, () => refresh())
  /** What somebody else saved since this edit began, while it is open whose counts. */
  let apart: { readonly revision: Revision; readonly sentence: string } | null = null

  const isMine = ({ draft }: Outgoing): boolean => draft?.document === id
  const waiting = (): boolean => log.pending() > 0 || outbox.waiting.get().some(isMine)

  const keeping = (): Keeping => {
    const { refused, updated } = log.mirror()
    if (refused !== null)
      return {
        kind: 'conflict',
        sentence: `${refused} Keep yours as a stove of its own, or take theirs.`,
      }
    if (apart !== null) return { kind: 'conflict', sentence: apart.sentence }
    if (!waiting()) return { kind: 'kept', at: updated }
    const link = linkState.get()
    // Nothing is called kept that is not on the drive yet.
    if (log.pending() > 0) return { kind: 'keeping' }
    return link.kind === 'up' || link.kind === 'looking'
      ? { kind: 'keeping' }
      : { kind: 'kept here only', sentence: link.sentence }
  }

  const view = (state: StoveState, moving: boolean): StoveState => ({
    ...state,
    moving,
    undo: undoLabel(log.mirror()),
    redo: redoLabel(log.mirror()),
    unsaved: isUnsaved(log.mirror()),
    keeping: keeping(),
  })

  const state: OpenCell<StoveState> = createCell(view(startOf(read.file), false))
  const parent = createCell<Parent | null>(null)

  /** Of the last edit; a gesture under way begins from it every frame anew. */
  let file: StoveFile = read.file
  const show = (next: StoveFile, moving: boolean): void => state.set(view(shown(state.get(), next), moving))
  const showMirror = (): void => {
    file = looseFileOf(textNow(log.mirror()), nameNow()) ?? file
    show(file, false)
    void askParent()
  }

  /** Keeping and labels alone. */
  const refresh = (): void => {
    const before = state.get()
    const next = view(before, before.moving)
    const same =
      next.undo === before.undo &&
      next.redo === before.redo &&
      next.unsaved === before.unsaved &&
      JSON.stringify(next.keeping) === JSON.stringify(before.keeping)
    if (!same) state.set(next)
  }

  const askParent = async (): Promise<void> => {
    const asked = log.mirror()
    const found = await parentOf(asked)
    if (log.mirror().base !== asked.base || isUnsaved(log.mirror()) !== isUnsaved(asked)) return
    const there = parent.get()
    if (there?.revision !== found?.revision || there?.note !== found?.note) parent.set(found)
  }

  const commitText = (label: string, text: string): void => {
    log.commit(label, text)
    showMirror()
  }

  const beginAgain = async (mirror: Mirror, revision: Revision): Promise<void> => {
    log.close()
    const number = (await keep.get('numbers', [id, window])) ?? 0
    const told = number > 0 || waiting()
    const after = begunAgain(mirror, revision, now())
    const entries = told
      ? [log.move('closeDraft', textNow(mirror)), log.autosave(BEGIN_AGAIN, textNow(after), revision.id)]
      : []
    apart = null
    void log.store(told ? after : beginMirror(after), entries).then(outbox.nudge)
    showMirror()
  }

  /** Somebody else's save, or an undo of one's own: goes on from there, or says that two went apart. */
  const follow = async (): Promise<void> => {
    const head = headOf(id)
    if (head === null) return
    const { base } = log.mirror()
    if (head.head === base) {
      apart = null
      refresh()
      return
    }
    const entries = await keep.getAllFromIndex('outbox', 'client', window)
    if (log.pending() > 0 || entries.some((entry) => isMine(entry) && entry.name === 'save')) return
    if (apart?.revision.id === head.head) return
    const revision = await workshop.revision(head.head)
    if (!revision.ok || headOf(id)?.head !== head.head || log.mirror().base !== base) return
    if (!isUnsaved(log.mirror()) && !state.get().moving) return beginAgain(log.mirror(), revision.value)
    const { note } = revision.value
    const noted = note === '' ? '' : ` (“${note}”)`
    apart = {
      revision: revision.value,
      sentence: `“${head.name}” was saved in another window meanwhile${noted}. Both are kept. Keep yours as a stove of its own, or take theirs.`,
    }
    refresh()
  }

  const save = async (note: string): Promise<Kept> => {
    log.close()
    const mirror = log.mirror()
    const safe = keeping()
    if (safe.kind === 'conflict') return refusedWith(safe.sentence)
    if (!isUnsaved(mirror)) return refusedWith('Nothing has changed since the last revision.')
    const revision = newId()
    const { base } = mirror
    const text = textNow(mirror)
    const act = await newAct()
    const wanted = { document: id, revision, base, text, note }
    await keepRevision({ id: revision, document: id, parents: [base], text, note, created: act.at })
    const [key] = await log.store(savedAs(log.mirror(), revision, now()), [
      { name: 'save', request: { act, wanted }, draft: { document: id, says: text } },
    ])
    const answer = outbox.answerTo(key as number)
    outbox.nudge()
    void askParent()
    const said = await answerOrAway(answer)
    return said === null || said.ok
      ? { ok: true, document: id, revision }
      : refusedWith(said.refusal.sentence)
  }

  const variant = async (name: string, note: string): Promise<Kept> => {
    log.close()
    const made = { document: newId(), revision: newId() }
    const sent = workshop.write('create', {
      act: await newAct(),
      wanted: {
        id: made.document,
        kind: 'stove',
        name,
        revision: made.revision,
        text: formatStoveFile({ ...file, name }),
        note,
        parents: [log.mirror().base],
      },
    })
    await sent.safe
    const said = await answerOrAway(sent.answer)
    return said === null || said.ok ? { ok: true, ...made } : refusedWith(said.refusal.sentence)
  }

  const takeTheirs = async (): Promise<void> => {
    const there = apart === null ? await workshop.open(id) : null
    const revision = apart?.revision ?? (there?.ok ? there.value.revision : null)
    if (revision === null) return
    if (log.mirror().refused !== null) {
      // The workshop's own count of this draft is taken up again before going on with it.
      const draft = await workshop.ask('draft', { document: id, client: window })
      if (draft.ok && draft.value !== null) await keep.put('numbers', draft.value.number, [id, window])
      else if (draft.ok) await keep.delete('numbers', [id, window])
    }
    await beginAgain({ ...log.mirror(), refused: null }, revision)
  }

  /** The workshop refused to go on with this edit: what comes after would be refused as well, its text stays here. */
  const stopAt = async ({ name, request }: Outgoing, sentence: string): Promise<void> => {
    const trx = keep.transaction('outbox', 'readwrite')
    for (const later of await trx.store.index('client').getAll(window))
      if (isMine(later)) void trx.store.delete(later.key as number)
    await trx.done
    const base = name === 'save' ? (request as { wanted: { base: string } }).wanted.base : null
    const old = base === null ? undefined : await keep.get('revisions', base)
    const mirror = log.mirror()
    const before = old === undefined ? mirror : { ...mirror, base: old.id, baseText: old.text }
    await log.store({ ...before, refused: sentence }, [])
  }

  onSettled(async (entry, answer) => {
    if (entry.client === window && isMine(entry) && !answer.ok) await stopAt(entry, answer.refusal.sentence)
    refresh()
  })
  outbox.waiting.subscribe(refresh)
  linkState.subscribe(refresh)
  documents.subscribe(() => void follow())
  void askParent()
  void follow()

  return {
    id,
    state: state as Cell<StoveState>,
    parent,
    preview: (change: Change) => show(change(file), true),
    commit: (label, change) => {
      file = change(file)
      log.commit(label, formatStoveFile(file))
      show(file, false)
      void askParent()
    },
    abandon: () => show(file, false),
    undo: () => {
      if (log.step(-1)) showMirror()
    },
    redo: () => {
      if (log.step(1)) showMirror()
    },
    save,
    branch: async (name, note) => {
      const kept = await variant(name, note)
      // The changes went with the variant; the stove they were made on is as it was, one undo away.
      if (kept.ok && isUnsaved(log.mirror())) {
        commitText(`leave it as it was, for “${name}”`, log.mirror().baseText)
        log.close()
      }
      return kept
    },
    keepMine: async (name) => {
      const kept = await variant(name, 'Kept beside what was saved in another window meanwhile.')
      if (kept.ok) await takeTheirs()
      return kept
    },
    takeTheirs,
    takeText: (label, text) => {
      if ('sentence' in stoveFileOf(text, nameNow())) return false
      commitText(label, text)
      log.close()
      return true
    },
  }
}
