import type { Problem } from '#basis/problem.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Finding, Stove } from '#stove/model.ts'
import type { Cell } from '../cell/cell.ts'

/** One change of a stove file: takes the old one, gives a new one, touches neither. */
export type Change = (file: StoveFile) => StoveFile

/** How safe the work is, in the order of a maker's worry. */
export type Keeping =
  | { readonly kind: 'kept'; readonly at: string }
  | { readonly kind: 'keeping' }
  /** The workshop does not answer: kept in this browser until it does. */
  | { readonly kind: 'kept here only'; readonly sentence: string }
  /** Somebody saved another revision meanwhile; both are there. */
  | { readonly kind: 'conflict'; readonly sentence: string }

export interface StoveState {
  readonly file: StoveFile
  /** As it reads; the last good one while something in the file does not. */
  readonly stove: Stove
  /** Why the file does not read, each a sentence with field, value, allowed range and fix; none: it does. */
  readonly problems: readonly Problem[]
  readonly findings: readonly Finding[]
  /** A gesture is under way: what is shown is not an edit yet. */
  readonly moving: boolean
  /** Words of what undo would take back and redo bring again, or null. */
  readonly undo: string | null
  readonly redo: string | null
  /** It says something else than its last revision. */
  readonly unsaved: boolean
  readonly keeping: Keeping
}

/** The revision that the ghost behind the section shows. */
export interface Parent {
  readonly document: string
  readonly revision: string
  readonly name: string
  /** What was changed from it, and why. */
  readonly note: string
  readonly stove: Stove
}

/** One stove on the bench. */
export interface StoveEditor {
  /** Of its document. */
  readonly id: string
  readonly state: Cell<StoveState>
  readonly parent: Cell<Parent | null>
  /** Shows what a gesture makes, every frame anew from where it began; nothing is kept yet. */
  readonly preview: (change: Change) => void
  /** Ends a gesture, or does a thing at once: one step of undo. `label`: `move the upper row`. */
  readonly commit: (label: string, change: Change) => void
  /** Ends a gesture as if it had not been. */
  readonly abandon: () => void
  readonly undo: () => void
  readonly redo: () => void
  /** Makes a revision of it; `note`: what was changed and why. */
  readonly save: (note: string) => Promise<Kept>
  /** Goes on as a new stove that descends from this one. */
  readonly branch: (name: string, note: string) => Promise<Kept>
}

/** A document that was written, or a sentence why not. */
export type Kept =
  | { readonly ok: true; readonly document: string; readonly revision: string }
  | { readonly ok: false; readonly sentence: string }
