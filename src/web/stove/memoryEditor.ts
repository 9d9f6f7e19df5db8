import type { StoveFile } from '#stove/document/schema.ts'
import { createCell } from '../cell/cell.ts'
import type { Change, Kept, Parent, StoveEditor, StoveState } from './editor.ts'
import { shown, startOf } from './shown.ts'

interface Step {
  readonly label: string
  readonly file: StoveFile
}

const NOTHING_KEEPS: Kept = { ok: false, sentence: 'There is no workshop behind this page: nothing is kept.' }

/** A stove on a bench without a workshop: for tests, and for a page that only looks at one. */
export const memoryEditor = (id: string, file: StoveFile, parent: Parent | null = null): StoveEditor => {
  const steps: Step[] = [{ label: '', file }]
  let at = 0
  const state = createCell<StoveState>(startOf(file))
  const show = (next: StoveFile, moving: boolean): void =>
    state.set({
      ...shown(state.get(), next),
      moving,
      undo: at > 0 ? (steps[at]?.label ?? null) : null,
      redo: steps[at + 1]?.label ?? null,
      unsaved: at > 0,
    })
  const now = (): StoveFile => (steps[at] as Step).file
  const go = (by: number): void => {
    if (steps[at + by] === undefined) return
    at += by
    show(now(), false)
  }
  return {
    id,
    state,
    parent: createCell(parent),
    preview: (change: Change) => show(change(now()), true),
    commit: (label: string, change: Change) => {
      const next = change(now())
      steps.splice(at + 1, steps.length, { label, file: next })
      at += 1
      show(next, false)
    },
    abandon: () => show(now(), false),
    undo: () => go(-1),
    redo: () => go(1),
    save: async () => NOTHING_KEEPS,
    branch: async () => NOTHING_KEEPS,
  }
}
