import type { DocumentHead } from './documents.ts'

/** An undone or undoable thing, for the buttons. */
export interface StepView {
  readonly id: string
  readonly label: string
  readonly created: string
}

export interface UndoState {
  /** What undo would take back, or null. */
  readonly undo: StepView | null
  readonly redo: StepView | null
}

export interface UndoReport {
  readonly step: StepView
  /** What it touched, as it stands now. */
  readonly documents: readonly DocumentHead[]
}
