import { type FormEvent, useState } from 'react'
import { STOVE_NAME_MOST } from '#stove/document/names.ts'
import type { DocumentHead } from '#wire/documents.ts'
import { say } from '../bench/notices.ts'
import { SheetDialog } from '../bench/sheetDialog.tsx'
import { saveText } from '../workshop/files.ts'
import { workshop } from '../workshop/workshop.ts'
import { rename, takeAway } from './deeds.ts'

/** What can be done with a stove as a whole. */
export const StoveMore = ({ stove }: { readonly stove: DocumentHead }) => {
  const [open, setOpen] = useState(false)
  const [name, setName] = useState(stove.name)
  const close = (): void => setOpen(false)
  const renameIt = (event: FormEvent): void => {
    event.preventDefault()
    close()
    if (name.trim() !== stove.name) void rename(stove, name.trim())
  }
  const save = async (): Promise<void> => {
    const answer = await workshop.ask('exportFile', { document: stove.id })
    if (answer.ok) saveText(answer.value)
    else say(answer.refusal.sentence)
  }
  return (
    <>
      <button
        type="button"
        data-weight="quiet"
        aria-haspopup="dialog"
        aria-label={`More for ${stove.name}`}
        onClick={() => {
          setName(stove.name)
          setOpen(true)
        }}
      >
        More
      </button>
      <SheetDialog title={stove.name} open={open} onClose={close}>
        <form className="stove-more" onSubmit={renameIt}>
          <label>
            Name
            <input
              value={name}
              maxLength={STOVE_NAME_MOST}
              required
              pattern=".*\S.*"
              onChange={(event) => setName(event.target.value)}
            />
          </label>
          <button
            type="submit"
            data-weight="main"
            disabled={name.trim() === '' || name.trim() === stove.name}
          >
            Rename
          </button>
        </form>
        <div className="row">
          <button type="button" onClick={() => void save()}>
            Save as a file
          </button>
          <button
            type="button"
            onClick={() => {
              close()
              void takeAway(stove)
            }}
          >
            Take away
          </button>
        </div>
        <p className="muted small">
          Taking away loses nothing: it can be brought back, with all its revisions.
        </p>
      </SheetDialog>
    </>
  )
}
