import { createCell } from '../cell/cell.ts'
import { useCell } from '../cell/useCell.ts'
import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'
import { headOfEither, revisionsSeen } from '../workshop/revisions.ts'
import { isEditor, stoveEditor } from '../workshop/useStoveEditor.ts'
import { documents, headOf } from '../workshop/workshop.ts'
import { dim } from './dim.ts'
import { KeepingWord } from './keepingWord.tsx'
import { mainPlaceOf, roomsOf, stoveAt, titleOf } from './places.ts'
import { SaveButton } from './saveSheet.tsx'
import { redo, undo, useUndoer } from './undoer.ts'

const NOTHING = createCell(null)

const UndoButtons = ({ place }: { readonly place: Place }) => {
  const { undo: back, redo: forth } = useUndoer(place)
  return (
    <div className="undo">
      <button
        type="button"
        data-weight="quiet"
        {...dim(back === null, undo)}
        aria-label={back === null ? 'Undo' : `Undo: ${back}`}
        title={back === null ? 'Nothing to take back here' : `Take back: ${back}`}
      >
        Undo<span className="undo-what">{back === null ? '' : `: ${back}`}</span>
      </button>
      <button
        type="button"
        data-weight="quiet"
        {...dim(forth === null, redo)}
        aria-label={forth === null ? 'Redo' : `Redo: ${forth}`}
        title={forth === null ? 'Nothing to do again here' : `Do again: ${forth}`}
      >
        Redo<span className="undo-what">{forth === null ? '' : `: ${forth}`}</span>
      </button>
    </div>
  )
}

const SaveHere = ({ place }: { readonly place: Place }) => {
  const open = useCell(place.at === 'stove' ? stoveEditor(place.stove) : NOTHING)
  return open !== null && isEditor(open) ? <SaveButton key={open.id} editor={open} /> : null
}

/** Where the bench is, what there is of this stove, what can be taken back, and how safe the work is. */
export const WhereBar = ({ place }: { readonly place: Place }) => {
  useCell(documents)
  useCell(revisionsSeen)
  const stove = stoveAt(place, headOf)
  const name = stove === null ? null : (headOf(stove)?.name ?? 'A stove')
  return (
    <section className="where" aria-label="Where you are">
      {/* A place of the header is named there already. */}
      <p className={mainPlaceOf(place) === place.at ? 'unseen' : 'where-name'}>
        {stove === null || name === null ? (
          titleOf(place, headOfEither)
        ) : (
          <>
            <Link to={{ at: 'home' }}>Stoves</Link>
            <span aria-hidden="true"> › </span>
            {name}
          </>
        )}
      </p>
      {stove === null ? null : (
        <nav aria-label={`Of ${name}`} className="where-rooms">
          {roomsOf(stove).map(({ name: room, place: to }) => (
            <Link key={room} to={to} aria-current={to.at === place.at ? 'page' : undefined}>
              {room}
            </Link>
          ))}
        </nav>
      )}
      <div className="where-safe">
        <UndoButtons place={place} />
        <SaveHere place={place} />
        <KeepingWord place={place} />
      </div>
    </section>
  )
}
