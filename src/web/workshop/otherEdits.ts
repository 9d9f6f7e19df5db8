import type { Draft } from '#wire/drafts.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { drafts } from './known.ts'
import { station } from './station.ts'

const cells = new Map<string, Cell<readonly Draft[]>>()

/** Edits of a document that other windows have not made a revision of. */
export const otherEdits = (document: string): Cell<readonly Draft[]> => {
  const there = cells.get(document)
  if (there !== undefined) return there
  const cell = createCell<readonly Draft[]>([])
  cells.set(document, cell)
  void station().then(({ window }) => {
    const look = (): void =>
      cell.set(
        drafts
          .get()
          .filter((draft) => draft.document === document && draft.client !== window && draft.unsaved),
      )
    drafts.subscribe(look)
    look()
  })
  return cell
}
