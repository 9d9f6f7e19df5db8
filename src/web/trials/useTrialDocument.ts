import { useEffect, useState } from 'react'
import type { Answer } from '#wire/answer.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { useCell } from '../cell/useCell.ts'
import { newId } from '../workshop/names.ts'
import { onSettled } from '../workshop/station.ts'
import { documents, headOf, newAct, workshop } from '../workshop/workshop.ts'
import { type Draft, draftFrom, textOf } from './draft.ts'
import { keptSave, savedIn } from './keptSave.ts'
import { forgetTyped, rememberTyped, typedIn } from './lastTyped.ts'

export type TrialKeeping =
  | { readonly kind: 'kept' }
  | { readonly kind: 'keeping' }
  /** Safe in this browser; the workshop has not answered yet. */
  | { readonly kind: 'kept here' }
  | { readonly kind: 'conflict'; readonly sentence: string }
  | { readonly kind: 'not kept'; readonly sentence: string }

export type OpenTrial =
  | { readonly kind: 'loading' }
  | { readonly kind: 'gone'; readonly sentence: string }
  | {
      readonly kind: 'open'
      readonly draft: Draft
      readonly name: string
      readonly stove: string | null
      readonly stoveRevision: string | null
      readonly keeping: TrialKeeping
    }

export interface TrialDocument {
  readonly state: Cell<OpenTrial>
  /** Changes the trial and keeps it a moment later. */
  readonly change: (change: (draft: Draft) => Draft) => void
  /** After a conflict: mine on top of theirs, or theirs. */
  readonly settle: (mine: boolean) => Promise<void>
}

/** A pause in typing after which it is kept [ms]. */
const PAUSE = 900

/** An answer that takes longer than this is waited for elsewhere [ms]. */
const SLOW = 1500

const openTrialDocument = (trial: string): TrialDocument => {
  const cell = createCell<OpenTrial>({ kind: 'loading' })
  let base = ''
  let timer: ReturnType<typeof setTimeout> | null = null
  let unkept = false
  let first = true
  /** Saves whose answer this page waits for itself. */
  const own = new Set<string>()
  const gone = (sentence: string): void => {
    if (cell.get().kind === 'open') return
    cell.set({ kind: 'gone', sentence })
    // Asked for again, it is looked for again.
    open.delete(trial)
  }
  const load = async (): Promise<void> => {
    const answer = await workshop.open(trial)
    // What was written here and is on its way yet goes before what the workshop said last.
    const kept = await keptSave(trial)
    if (unkept) return
    const document = answer.ok ? answer.value.document : kept === null ? null : headOf(trial)
    const said =
      kept ?? (answer.ok ? { revision: answer.value.revision.id, text: answer.value.revision.text } : null)
    if (document === null || said === null) return gone(answer.ok ? '' : answer.refusal.sentence)
    const draft = document.kind === 'trial' ? draftFrom(said.text) : null
    if (draft === null) return gone(`“${document.name}” is no trial that this page can read.`)
    base = said.revision
    cell.set({
      kind: 'open',
      draft,
      name: document.name,
      stove: document.aboutDocument,
      stoveRevision: document.aboutRevision,
      keeping: { kind: kept === null ? 'kept' : 'kept here' },
    })
    if (first) goOnFromTyped(said.text)
    first = false
  }
  /** What a page before this one had no time to lay in goes on from where it was typed. */
  const goOnFromTyped = (text: string): void => {
    const typed = typedIn(trial)
    if (typed === null) return
    const draft = typed.text === text ? null : draftFrom(typed.text)
    const now = cell.get()
    if (draft === null || now.kind !== 'open') {
      forgetTyped(trial, typed.text)
      return
    }
    base = typed.base
    unkept = true
    cell.set({ ...now, draft, keeping: { kind: 'keeping' } })
    later()
  }
  const say = (keeping: TrialKeeping): void => {
    const now = cell.get()
    if (now.kind === 'open') cell.set({ ...now, keeping })
  }
  const rename = async (draft: Draft): Promise<void> => {
    const head = headOf(trial)
    const name = typeof draft.name === 'string' ? draft.name : ''
    // What is still on its way has no version to name yet.
    if (head === null || head.version === 0 || name.trim() === '' || name === head.name) return
    workshop.write('rename', { act: await newAct(), document: trial, version: head.version, name })
  }
  /** What the workshop said to a save; only the last one tells how it stands. */
  const answered = async (revision: string, answer: Answer<unknown>): Promise<void> => {
    const now = cell.get()
    if (unkept || base !== revision || now.kind !== 'open') return
    if (answer.ok) {
      say({ kind: 'kept' })
      await rename(now.draft)
    } else if (answer.refusal.code === 'conflict')
      say({
        kind: 'conflict',
        sentence: 'Somebody else changed this trial meanwhile. Nothing is lost: both are in the workshop.',
      })
    else say({ kind: 'not kept', sentence: answer.refusal.sentence })
  }
  const keep = async (): Promise<void> => {
    timer = null
    const now = cell.get()
    if (now.kind !== 'open') return
    unkept = false
    say({ kind: 'keeping' })
    const revision = newId()
    const text = textOf(now.draft)
    own.add(revision)
    const act = await newAct()
    const sent = workshop.write('save', {
      act,
      wanted: { document: trial, revision, base, text, note: 'Trial filled in' },
    })
    base = revision
    void sent.safe.then(() => forgetTyped(trial, text))
    const slow = setTimeout(() => {
      void sent.safe.then(() => {
        if (!unkept && base === revision && own.has(revision)) say({ kind: 'kept here' })
      })
    }, SLOW)
    const answer = await sent.answer
    own.delete(revision)
    clearTimeout(slow)
    await answered(revision, answer)
  }
  // Those that a page before this one had laid in.
  onSettled((sent, answer) => {
    const wanted = savedIn(sent)
    if (wanted?.document === trial && !own.has(wanted.revision)) return answered(wanted.revision, answer)
  })
  const later = (): void => {
    if (timer !== null) clearTimeout(timer)
    timer = setTimeout(() => void keep(), PAUSE)
  }
  addEventListener('pagehide', () => {
    if (timer === null) return
    clearTimeout(timer)
    void keep()
  })
  documents.subscribe(() => {
    const head = headOf(trial)
    const now = cell.get()
    const ours = now.kind === 'open' && now.keeping.kind === 'kept' && !unkept
    if (head !== null && head.head !== base && ours) void load()
  })
  void load()
  return {
    state: cell,
    change: (change) => {
      const now = cell.get()
      if (now.kind !== 'open') return
      unkept = true
      const draft = change(now.draft)
      cell.set({ ...now, draft, keeping: { kind: 'keeping' } })
      rememberTyped(trial, { base, text: textOf(draft) })
      later()
    },
    settle: async (mine) => {
      if (!mine) return load()
      const head = await workshop.open(trial)
      if (!head.ok) return say({ kind: 'not kept', sentence: head.refusal.sentence })
      base = head.value.revision.id
      await keep()
    },
  }
}

const open = new Map<string, TrialDocument>()

const documentOf = (trial: string): TrialDocument => {
  const known = open.get(trial)
  if (known !== undefined) return known
  const made = openTrialDocument(trial)
  open.set(trial, made)
  return made
}

export const useTrialDocument = (trial: string): readonly [OpenTrial, TrialDocument] => {
  const [document, setDocument] = useState(() => documentOf(trial))
  useEffect(() => setDocument(documentOf(trial)), [trial])
  return [useCell(document.state), document]
}
