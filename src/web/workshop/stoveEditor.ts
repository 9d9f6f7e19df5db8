import { problemSentence } from '#basis/problem.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { readJson } from '#stove/document/json.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Answer } from '#wire/answer.ts'
import type { Revision } from '#wire/documents.ts'
import { type Cell, createCell, type OpenCell } from '../cell/cell.ts'
import type { Change, Keeping, Kept, Parent, StoveEditor, StoveState } from '../stove/editor.ts'
import { shown, startOf } from '../stove/shown.ts'
import type { Outgoing } from './keep.ts'
import { linkState } from './link.ts'
import {
  amended,
  beginMirror,
  begunAgain,
  committed,
  isUnsaved,
  type Mirror,
  moved,
  redoLabel,
  savedAs,
  textNow,
  undoLabel,
} from './mirror.ts'
import { newId, now } from './names.ts'
import { documents, headOf, newAct, onSettled, type Station, takenAway, workshop } from './workshop.ts'

/** Edits of one name that follow each other within this time are one step: a key held down. [ms] */
const ONE_STEP = 700

/** The bench's own editor of a stove, with what the frame shows beside it. */
export interface WorkshopEditor extends StoveEditor {
  /** Goes on as a stove of its own with what is here; the one it came from stays as somebody else saved it. */
  readonly keepMine: (name: string) => Promise<Kept>
  /** Goes on from what somebody else saved; what was here is one undo away. */
  readonly takeTheirs: () => Promise<void>
  /** Takes a whole text over, from another window's edit. */
  readonly takeText: (label: string, text: string) => boolean
}

const failed = (sentence: string): Kept => ({ ok: false, sentence })

/** A text of the workshop as a stove file under the document's name, or why it does not read. */
const fileOf = (text: string, name: string): { readonly file: StoveFile } | { readonly sentence: string } => {
  const read = readStoveDocument(text)
  return read.ok
    ? { file: { ...read.value.file, name } }
    : { sentence: `This stove does not read.\n${read.problems.map(problemSentence).join('\n')}` }
}

const looseFile = (text: string, name: string): StoveFile | null => {
  const json = readJson(text)
  return json.ok ? ({ ...(json.value as object), name } as StoveFile) : null
}

const sameBut = (mirror: Mirror): Mirror => ({ ...mirror, refused: null })

export const openStoveEditor = async (
  { keep, outbox, window }: Station,
  id: string,
): Promise<WorkshopEditor | { readonly sentence: string }> => {
  const opened = await workshop.open(id)
  if (!opened.ok) return { sentence: opened.refusal.sentence }
  const { revision: first } = opened.value
  const nameNow = (): string => headOf(id)?.name ?? opened.value.document.name

  const waiting = (): readonly Outgoing[] =>
    outbox.waiting.get().filter(({ draft, document }) => (draft?.document ?? document) === id)

  const fresh = (): Mirror =>
    beginMirror({
      document: id,
      client: window,
      base: first.id,
      baseText: first.text,
      updated: first.created,
    })

  /** What this browser remembers of the edit, set right by what the workshop has of it. */
  const find = async (): Promise<Mirror> => {
    const kept = await keep.get('mirrors', [id, window])
    const entries = await keep.getAllFromIndex('outbox', 'client', window)
    if (kept !== undefined && entries.some(({ draft }) => draft?.document === id)) return kept
    const answer = await workshop.ask('draft', { document: id, client: window })
    if (!answer.ok) return kept ?? fresh()
    const draft = answer.value
    if (draft === null) {
      await keep.delete('numbers', [id, window])
      // A workshop that was set back knows nothing of it; the edit itself is still here.
      return kept?.refused == null ? fresh() : kept
    }
    const number = await keep.get('numbers', [id, window])
    await keep.put('numbers', draft.number, [id, window])
    if (kept !== undefined && number === draft.number && textNow(kept) === draft.text) return kept
    if (kept?.refused != null) return kept
    if (draft.closed) return fresh()
    const base = draft.base === null ? null : await workshop.revision(draft.base)
    const from = base?.ok ? base.value : first
    const begun = beginMirror({
      document: id,
      client: window,
      base: from.id,
      baseText: from.text,
      updated: draft.updated,
    })
    return draft.text === from.text
      ? begun
      : committed(begun, { label: draft.undo ?? 'edit', text: draft.text }, draft.updated)
  }

  let mirror = await find()
  const read = fileOf(textNow(mirror), nameNow())
  if ('sentence' in read) return read

  /** Writes that this browser has not finished keeping. */
  let pending = 0
  let lost: { readonly revision: Revision; readonly sentence: string } | null = null

  const keeping = (): Keeping => {
    if (mirror.refused !== null)
      return {
        kind: 'conflict',
        sentence: `${mirror.refused} Keep yours as a stove of its own, or take theirs.`,
      }
    if (lost !== null) return { kind: 'conflict', sentence: lost.sentence }
    if (pending === 0 && waiting().length === 0) return { kind: 'kept', at: mirror.updated }
    const link = linkState.get()
    return link.kind === 'up' || link.kind === 'looking'
      ? { kind: 'keeping' }
      : { kind: 'kept here only', sentence: link.sentence }
  }

  const view = (state: StoveState, moving: boolean): StoveState => ({
    ...state,
    moving,
    undo: undoLabel(mirror),
    redo: redoLabel(mirror),
    unsaved: isUnsaved(mirror),
    keeping: keeping(),
  })

  const state: OpenCell<StoveState> = createCell(view(startOf(read.file), false))
  const parent = createCell<Parent | null>(null)

  const fileNow = (): StoveFile => looseFile(textNow(mirror), nameNow()) ?? state.get().file

  const show = (file: StoveFile, moving: boolean): void => state.set(view(shown(state.get(), file), moving))

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

  // Writes go one after the other, so that the outbox has them in the order in which they were done.
  let writing: Promise<unknown> = Promise.resolve()
  const inOrder = <T>(work: () => Promise<T>): Promise<T> => {
    const next = writing.then(work)
    writing = next.catch(() => undefined)
    return next
  }

  /** Keeps the mirror and what the workshop is to hear, both or neither. */
  const store = (after: Mirror, entries: readonly Omit<Outgoing, 'client'>[]): Promise<readonly number[]> => {
    mirror = after
    pending += 1
    return inOrder(async () => {
      const trx = keep.transaction(['mirrors', 'outbox'], 'readwrite', { durability: 'strict' })
      void trx.objectStore('mirrors').put(after, [id, window])
      const keys: number[] = []
      for (const entry of entries)
        keys.push(await trx.objectStore('outbox').add({ ...entry, client: window }))
      await trx.done
      await outbox.look()
      pending -= 1
      refresh()
      return keys
    })
  }

  const autosave = (label: string, says: string, base: string): Omit<Outgoing, 'client'> => ({
    name: 'autosave',
    request: { document: id, client: window, at: now(), base, text: says, label: label.slice(0, 200) },
    draft: { document: id, says },
  })

  const move = (name: 'undoEdit' | 'redoEdit' | 'closeDraft', says: string): Omit<Outgoing, 'client'> => ({
    name,
    request: { document: id, client: window, at: now() },
    draft: { document: id, says },
  })

  const nudge = (keys: Promise<unknown>): void => void keys.then(outbox.nudge).then(refresh)

  // The newest step is held back for a moment, while a key held down may still carry it further.
  interface OpenStep {
    readonly label: string
    readonly token: string
    readonly release: () => void
    readonly keys: Promise<readonly number[]>
    readonly timer: ReturnType<typeof setTimeout>
  }
  let open: OpenStep | null = null
  const closeStep = (): void => {
    if (open === null) return
    const { timer, release, keys } = open
    open = null
    clearTimeout(timer)
    void keys.then(release)
  }

  /** The open step goes a little further: one entry for the workshop, written anew. */
  const carryOn = ({ label, token, release, keys, timer }: OpenStep, text: string): void => {
    clearTimeout(timer)
    mirror = amended(mirror, text, now())
    const after = mirror
    const entry = { ...autosave(label, text, after.base), token, client: window }
    const again = inOrder(async () => {
      const [key] = await keys
      const trx = keep.transaction(['mirrors', 'outbox'], 'readwrite', { durability: 'strict' })
      void trx.objectStore('mirrors').put(after, [id, window])
      if (key !== undefined) void trx.objectStore('outbox').put({ ...entry, key })
      await trx.done
      return key === undefined ? [] : [key]
    })
    open = { label, token, release, keys: again, timer: setTimeout(closeStep, ONE_STEP) }
  }

  const commitText = (label: string, text: string): void => {
    if (open !== null && open.label === label) {
      carryOn(open, text)
      return
    }
    closeStep()
    const after = committed(mirror, { label, text }, now())
    if (after === mirror) return
    if (after.refused !== null) {
      // Nothing goes to the workshop until it is settled whose edit counts.
      void store(after, [])
      return
    }
    const token = newId()
    const release = outbox.hold(token)
    const keys = store(after, [{ ...autosave(label, text, after.base), token }])
    open = { label, token, release, keys, timer: setTimeout(closeStep, ONE_STEP) }
  }

  const step = (by: -1 | 1): void => {
    closeStep()
    const after = moved(mirror, by, now())
    if (after === mirror) return
    const says = textNow(after)
    nudge(store(after, after.refused !== null ? [] : [move(by < 0 ? 'undoEdit' : 'redoEdit', says)]))
    show(fileNow(), false)
  }

  const askParent = async (): Promise<void> => {
    const unsaved = isUnsaved(mirror)
    const base = await workshop.revision(mirror.base)
    if (!base.ok) return
    const [older] = base.value.parents
    const from: Answer<Revision> | null = unsaved
      ? base
      : older === undefined
        ? null
        : await workshop.revision(older)
    if (from === null || !from.ok) {
      parent.set(null)
      return
    }
    if (parent.get()?.revision === from.value.id && unsaved === (parent.get()?.note === '')) return
    const before = readStoveDocument(from.value.text)
    if (!before.ok) return parent.set(null)
    const { id: revision, document } = from.value
    const name = headOf(document)?.name ?? before.value.stove.name
    const note = unsaved ? '' : base.value.note
    parent.set({ document, revision, name, note, stove: before.value.stove })
  }

  const beginAgain = async (revision: { readonly id: string; readonly text: string }): Promise<void> => {
    closeStep()
    const told = ((await keep.get('numbers', [id, window])) ?? 0) > 0 || waiting().length > 0
    const after = begunAgain(mirror, revision, now())
    const entries = told
      ? [move('closeDraft', textNow(mirror)), autosave('begin again', textNow(after), revision.id)]
      : []
    lost = null
    nudge(store(told ? after : beginMirror({ ...after }), entries))
    show(fileNow(), false)
    await askParent()
  }

  /** Somebody else's save, or an undo of one's own: goes on from there, or says that two went apart. */
  const follow = async (): Promise<void> => {
    const head = headOf(id)
    if (head === null) return
    const saving = [...waiting(), ...(await keep.getAllFromIndex('outbox', 'client', window))].some(
      ({ name, draft, document }) => name === 'save' && (draft?.document ?? document) === id,
    )
    if (saving || pending > 0 || head.head === mirror.base) {
      if (head.head === mirror.base && lost !== null) {
        lost = null
        refresh()
      }
      return
    }
    if (lost?.revision.id === head.head) return
    const revision = await workshop.revision(head.head)
    if (!revision.ok || headOf(id)?.head !== head.head || head.head === mirror.base) return
    if (!isUnsaved(mirror) && !state.get().moving) return beginAgain(revision.value)
    const { note } = revision.value
    lost = {
      revision: revision.value,
      sentence: `“${head.name}” was saved in another window meanwhile${note === '' ? '' : ` (“${note}”)`}. Both are kept. Keep yours as a stove of its own, or take theirs.`,
    }
    refresh()
  }

  const commit = (label: string, change: Change): void => {
    const next = change(fileNow())
    commitText(label, formatStoveFile(next))
    show(next, false)
    void askParent()
  }

  const answered = async (keys: Promise<readonly number[]>): Promise<Answer<unknown>> => {
    const [key] = await keys
    const answer = outbox.answerTo(key as number)
    outbox.nudge()
    refresh()
    return answer
  }

  const orDown = async (answer: Promise<Answer<unknown>>): Promise<Answer<unknown> | null> => {
    let stop = (): void => undefined
    const down = new Promise<null>((resolve) => {
      const look = (): void => {
        if (linkState.get().kind === 'down') resolve(null)
      }
      stop = linkState.subscribe(look)
      look()
    })
    const first = await Promise.race([answer, down])
    stop()
    return first
  }

  const save = async (note: string): Promise<Kept> => {
    closeStep()
    if (mirror.refused !== null || lost !== null) return failed(keepingSentence())
    if (!isUnsaved(mirror)) return failed('Nothing has changed since the last revision.')
    const revision = newId()
    const { base } = mirror
    const text = textNow(mirror)
    const act = await newAct()
    const keys = store(savedAs(mirror, revision, now()), [
      {
        name: 'save',
        request: { act, wanted: { document: id, revision, base, text, note } },
        draft: { document: id, says: text },
      },
    ])
    await keys
    await keep.put('revisions', {
      id: revision,
      document: id,
      parents: [base],
      text,
      note,
      hash: '',
      created: act.at,
    })
    void askParent()
    const said = await orDown(answered(keys))
    // Not answered yet is not lost: it is in the outbox, and `keeping` says so.
    if (said === null || said.ok) return { ok: true, document: id, revision }
    return failed(said.refusal.sentence)
  }

  const keepingSentence = (): string => {
    const { keeping: now } = state.get()
    return 'sentence' in now ? now.sentence : 'Wait until it is settled which of the two counts.'
  }

  const variant = async (name: string, note: string): Promise<Kept> => {
    closeStep()
    const file = fileNow()
    const made = { document: newId(), revision: newId() }
    const sentVariant = workshop.write('create', {
      act: await newAct(),
      wanted: {
        id: made.document,
        kind: 'stove',
        name,
        revision: made.revision,
        text: formatStoveFile({ ...file, name }),
        note,
        parents: [mirror.base],
      },
    })
    await sentVariant.safe
    const said = await orDown(sentVariant.answer)
    return said === null || said.ok ? { ok: true, ...made } : failed(said.refusal.sentence)
  }

  const theirs = async (): Promise<Revision | null> => {
    if (lost !== null) return lost.revision
    const now = await workshop.open(id)
    return now.ok ? now.value.revision : null
  }

  const takeTheirs = async (): Promise<void> => {
    const revision = await theirs()
    if (revision === null) return
    if (mirror.refused !== null) {
      // The workshop's own count of this draft is taken up again before going on with it.
      const draft = await workshop.ask('draft', { document: id, client: window })
      if (draft.ok && draft.value !== null) await keep.put('numbers', draft.value.number, [id, window])
      else if (draft.ok) await keep.delete('numbers', [id, window])
      mirror = sameBut(mirror)
    }
    await beginAgain(revision)
  }

  onSettled(async (entry, answer) => {
    const about = entry.draft?.document
    if (entry.client !== window || about !== id) return refresh()
    if (!answer.ok) {
      // What comes after it in this edit would be refused as well; its text is in the mirror.
      const trx = keep.transaction('outbox', 'readwrite')
      for (const later of await trx.store.index('client').getAll(window))
        if (later.draft?.document === id) void trx.store.delete(later.key as number)
      await trx.done
      const base = entry.name === 'save' ? (entry.request as { wanted: { base: string } }).wanted.base : null
      const old = base === null ? null : await keep.get('revisions', base)
      const before =
        old === null || old === undefined ? mirror : { ...mirror, base: old.id, baseText: old.text }
      await store({ ...before, refused: answer.refusal.sentence }, [])
    }
    refresh()
  })
  outbox.waiting.subscribe(refresh)
  linkState.subscribe(refresh)
  documents.subscribe(() => void follow())
  takenAway.subscribe(refresh)

  void askParent()
  void follow()

  return {
    id,
    state: state as Cell<StoveState>,
    parent,
    preview: (change) => show(change(fileNow()), true),
    commit,
    abandon: () => show(fileNow(), false),
    undo: () => {
      step(-1)
      void askParent()
    },
    redo: () => {
      step(1)
      void askParent()
    },
    save,
    branch: async (name, note) => {
      const kept = await variant(name, note)
      // The changes went with the variant; the stove they were made on is as it was, one undo away.
      if (kept.ok && isUnsaved(mirror)) {
        commitText(`leave it as it was, for “${name}”`, mirror.baseText)
        closeStep()
        show(fileNow(), false)
        void askParent()
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
      const next = fileOf(text, nameNow())
      if ('sentence' in next) return false
      commitText(label, text)
      closeStep()
      show(next.file, false)
      void askParent()
      return true
    },
  }
}
