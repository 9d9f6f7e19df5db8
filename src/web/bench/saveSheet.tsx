import { type FormEvent, useEffect, useState } from 'react'
import { STOVE_NAME_MOST } from '#stove/document/names.ts'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { go } from '../routes/here.ts'
import type { WorkshopEditor } from '../workshop/stoveEditor.ts'
import { documents } from '../workshop/workshop.ts'
import { say } from './notices.ts'
import { SheetDialog } from './sheetDialog.tsx'

type As = 'revision' | 'variant'

/** `Redshank 2`, or the next number that is free. */
const freeName = (name: string, taken: ReadonlySet<string>): string => {
  const [, stem = name, number = '1'] = /^(.*?)(?: (\d+))?$/.exec(name) ?? []
  for (let next = Number(number) + 1; ; next++) if (!taken.has(`${stem} ${next}`)) return `${stem} ${next}`
}

const SaveForm = ({ editor, done }: { readonly editor: WorkshopEditor; readonly done: () => void }) => {
  const { file, unsaved, keeping } = useCell(editor.state)
  const stoves = useCell(documents).filter(({ kind }) => kind === 'stove')
  const [as, setAs] = useState<As>(unsaved ? 'revision' : 'variant')
  const [note, setNote] = useState('')
  const [name, setName] = useState(() => freeName(file.name, new Set(stoves.map((stove) => stove.name))))
  const [busy, setBusy] = useState(false)
  const [sentence, setSentence] = useState(keeping.kind === 'conflict' ? keeping.sentence : '')
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    setBusy(true)
    const kept = await (as === 'revision'
      ? editor.save(note.trim())
      : editor.branch(name.trim(), note.trim()))
    setBusy(false)
    if (!kept.ok) {
      setSentence(kept.sentence)
      return
    }
    done()
    if (as === 'variant') go({ at: 'stove', stove: kept.document })
    say(
      as === 'revision'
        ? `Saved as a revision of “${file.name}”.`
        : `“${name.trim()}” is a stove of its own now.`,
    )
  }
  return (
    <form className="save-sheet" onSubmit={(event) => void keep(event)}>
      <label>
        What did you change, and why?
        <textarea rows={3} maxLength={4000} value={note} onChange={(event) => setNote(event.target.value)} />
      </label>
      <fieldset>
        <legend>Keep it as</legend>
        <label>
          <input
            type="radio"
            name="save-as"
            checked={as === 'revision'}
            disabled={!unsaved}
            onChange={() => setAs('revision')}
          />
          a revision of {file.name}
          {unsaved ? '' : ' (nothing has changed since the last one)'}
        </label>
        <label>
          <input type="radio" name="save-as" checked={as === 'variant'} onChange={() => setAs('variant')} />a
          variant: a stove of its own, beside {file.name}
        </label>
      </fieldset>
      {as === 'variant' ? (
        <label>
          Its name
          <input
            value={name}
            maxLength={STOVE_NAME_MOST}
            required
            onChange={(event) => setName(event.target.value)}
          />
        </label>
      ) : null}
      <p role="status" className="save-sentence">
        {sentence}
      </p>
      <div className="row">
        <button type="submit" data-weight="main" disabled={busy || (as === 'variant' && name.trim() === '')}>
          {busy ? 'Keeping …' : as === 'revision' ? 'Save the revision' : 'Make the variant'}
        </button>
      </div>
    </form>
  )
}

/** Makes a revision or a variant of what is on the bench, with a note why. */
export const SaveButton = ({ editor }: { readonly editor: WorkshopEditor }) => {
  const [open, setOpen] = useState(false)
  const unsaved = useCellPart(editor.state, (state) => state.unsaved)
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 's') return
      event.preventDefault()
      setOpen(true)
    }
    addEventListener('keydown', press)
    return () => removeEventListener('keydown', press)
  }, [])
  return (
    <>
      <button
        type="button"
        data-weight={unsaved ? 'main' : undefined}
        aria-haspopup="dialog"
        onClick={() => setOpen(true)}
      >
        Save …
      </button>
      <SheetDialog title="Save what is on the bench" open={open} onClose={() => setOpen(false)}>
        <SaveForm editor={editor} done={() => setOpen(false)} />
      </SheetDialog>
    </>
  )
}
