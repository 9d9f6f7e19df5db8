import { type Cell, createCell } from '../cell/cell.ts'
import { useCell } from '../cell/useCell.ts'
import type { StoveEditor } from '../stove/editor.ts'
import { documents } from './known.ts'
import { station } from './station.ts'
import { openStoveEditor, type WorkshopEditor } from './stoveEditor.ts'

export type OpenStove<E extends StoveEditor = StoveEditor> =
  | E
  | { readonly loading: true }
  | { readonly sentence: string }

const stoves = new Map<string, Cell<OpenStove<WorkshopEditor>>>()

/** A stove of the workshop on this bench; the same editor for everyone who asks, for as long as the page lives. */
export const stoveEditor = (document: string): Cell<OpenStove<WorkshopEditor>> => {
  const there = stoves.get(document)
  if (there !== undefined) return there
  const cell = createCell<OpenStove<WorkshopEditor>>({ loading: true })
  stoves.set(document, cell)
  const open = async (): Promise<void> => {
    try {
      cell.set(await openStoveEditor(await station(), document))
    } catch (fault) {
      cell.set({ sentence: `This stove could not be laid on the bench: ${String(fault)}` })
    }
  }
  let trying = open()
  // What could not be opened is tried again when the workshop has news: it was away, or has it only now.
  documents.subscribe(() => {
    if ('sentence' in cell.get()) trying = trying.then(() => ('sentence' in cell.get() ? open() : undefined))
  })
  return cell
}

export const isEditor = <E extends StoveEditor>(open: OpenStove<E>): open is E => 'state' in open

/** One stove on the bench: `{loading}` until it is there, `{sentence}` when it cannot be. */
export const useStoveEditor = (document: string): OpenStove<WorkshopEditor> => useCell(stoveEditor(document))
