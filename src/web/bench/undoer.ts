import { createCell } from '../cell/cell.ts'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { here } from '../routes/here.ts'
import type { Place } from '../routes/routes.ts'
import { isEditor, stoveEditor } from '../workshop/useStoveEditor.ts'
import { newAct, undoState, workshop } from '../workshop/workshop.ts'
import { say } from './notices.ts'

/** What undo and redo do where the bench is, in words; null: nothing. */
export interface Undoer {
  readonly undo: string | null
  readonly redo: string | null
}

const NOTHING = createCell(null)

const editorAt = (place: Place) => {
  if (place.at !== 'stove') return null
  const open = stoveEditor(place.stove).get()
  return isEditor(open) ? open : null
}

const inWorkshop = async (way: 'undo' | 'redo'): Promise<void> => {
  const answer = await workshop.write(way, { act: await newAct() }).answer
  if (!answer.ok) say(answer.refusal.sentence)
  else say(`${way === 'undo' ? 'Taken back' : 'Done again'}: ${answer.value.step.label}.`)
}

/** On the bench it is the stove's edits, elsewhere what was done in the workshop. */
export const undo = (): void => {
  const editor = editorAt(here.get())
  if (editor !== null) editor.undo()
  else if (undoState.get().undo !== null) void inWorkshop('undo')
}

export const redo = (): void => {
  const editor = editorAt(here.get())
  if (editor !== null) editor.redo()
  else if (undoState.get().redo !== null) void inWorkshop('redo')
}

export const useUndoer = (place: Place): Undoer => {
  const open = useCell(place.at === 'stove' ? stoveEditor(place.stove) : NOTHING)
  const editor = open !== null && isEditor(open) ? open : null
  const stove = editor?.state ?? NOTHING
  const back = useCellPart(stove, (state) => state?.undo ?? null)
  const forth = useCellPart(stove, (state) => state?.redo ?? null)
  const steps = useCell(undoState)
  if (place.at === 'stove') return { undo: back, redo: forth }
  return { undo: steps.undo?.label ?? null, redo: steps.redo?.label ?? null }
}
