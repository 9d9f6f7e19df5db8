import { ARCHIVE_PATH } from '#wire/routes.ts'
import { useCell } from '../../cell/useCell.ts'
import { FilesButton } from '../../home/bringFiles.tsx'
import { drafts } from '../workshop.ts'

/** The whole workshop as one file, out and in. */
export const Archive = () => {
  const unsaved = useCell(drafts).filter((draft) => draft.unsaved && !draft.closed).length
  return (
    <section>
      <h2>Take it with you</h2>
      <p>
        The archive is a zip of plain files: every stove with all its revisions, the shelf, the trials and the
        photos. It comes back into this workshop or another one; what is there already is not doubled, and
        nothing is overwritten.
      </p>
      {unsaved === 0 ? null : (
        <p className="workshop-warn">
          {unsaved === 1 ? 'One edit is' : `${unsaved} edits are`} no revision yet and would stay behind: save
          first what is to go along.
        </p>
      )}
      <div className="row">
        <a className="button" href={ARCHIVE_PATH} download>
          Save the archive
        </a>
        <FilesButton />
      </div>
    </section>
  )
}
