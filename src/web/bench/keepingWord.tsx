import { createCell } from '../cell/cell.ts'
import { useCell, useCellPart } from '../cell/useCell.ts'
import type { Place } from '../routes/routes.ts'
import type { Keeping } from '../stove/editor.ts'
import { linkState } from '../workshop/link.ts'
import { isEditor, stoveEditor } from '../workshop/useStoveEditor.ts'
import { waitingCount } from '../workshop/waiting.ts'

const NOTHING = createCell(null)

const timeOf = (at: string): string => {
  const when = new Date(at)
  return Number.isNaN(when.getTime())
    ? ''
    : when.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })
}

const wordOf = (keeping: Keeping, unsaved: boolean): { readonly word: string; readonly title: string } => {
  switch (keeping.kind) {
    case 'kept':
      return unsaved
        ? {
            word: 'Kept, not a revision yet',
            title: `The workshop has every edit up to ${timeOf(keeping.at)}`,
          }
        : { word: 'All kept', title: 'As in its last revision' }
    case 'keeping':
      return { word: 'Keeping …', title: 'On its way to the workshop' }
    case 'kept here only':
      return { word: 'Kept in this browser', title: keeping.sentence }
    case 'conflict':
      return { word: 'Two went apart', title: keeping.sentence }
  }
}

/** How safe the work is, in two or three words. */
export const KeepingWord = ({ place }: { readonly place: Place }) => {
  const open = useCell(place.at === 'stove' ? stoveEditor(place.stove) : NOTHING)
  const edit = open !== null && isEditor(open) ? open.state : NOTHING
  const keeping = useCellPart(edit, (state) => state?.keeping ?? null)
  const unsaved = useCellPart(edit, (state) => state?.unsaved ?? false)
  const waiting = useCell(waitingCount)
  const link = useCell(linkState)
  const said =
    keeping === null
      ? waiting === 0
        ? link.kind === 'down'
          ? { word: 'Workshop away', title: link.sentence }
          : { word: 'All kept', title: 'The workshop has everything done here' }
        : link.kind === 'up'
          ? { word: 'Keeping …', title: 'On its way to the workshop' }
          : { word: `${waiting} kept in this browser`, title: 'Goes to the workshop when it answers again' }
      : wordOf(keeping, unsaved)
  const kind = keeping?.kind ?? (link.kind === 'down' ? 'kept here only' : 'kept')
  return (
    <p className="keeping" data-kind={kind} title={said.title} role="status">
      <span aria-hidden="true" className="keeping-mark" />
      {said.word}
    </p>
  )
}
