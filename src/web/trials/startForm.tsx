import { type FormEvent, useEffect, useState } from 'react'
import type { DocumentHead, RevisionHead } from '#wire/documents.ts'
import { go } from '../routes/here.ts'
import { workshop } from '../workshop/workshop.ts'
import type { KnownTrial } from './allTrials.ts'
import { at } from './draft.ts'
import { isInvented } from './invented.ts'
import { startTrial } from './startTrial.ts'

const today = (): string => {
  const now = new Date()
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** What this stove was called in its last burn. */
const variantBefore = (before: readonly KnownTrial[]): string | null => {
  const said = at(before.at(-1)?.draft, ['stove', 'variant'])
  return typeof said === 'string' ? said : null
}

interface StartProps {
  readonly stove: DocumentHead
  /** Burns of this stove so far. */
  readonly before: readonly KnownTrial[]
  /** The last burn of anything here. */
  readonly like: KnownTrial | null
}

/** Which stove, as it stands there; the rest is asked on the desk. */
export const StartForm = ({ stove, before, like }: StartProps) => {
  const [revisions, setRevisions] = useState<readonly RevisionHead[]>([])
  const [revision, setRevision] = useState(stove.head)
  const [variant, setVariant] = useState(() => variantBefore(before) ?? stove.name)
  const [asBuilt, setAsBuilt] = useState<'drawn' | 'built'>('drawn')
  const [differs, setDiffers] = useState('')
  /** Null: nobody said, and figures that were invented are not taken over by themselves. */
  const [wish, setWish] = useState<boolean | null>(null)
  const copy = wish ?? (like !== null && !isInvented(like.draft))
  const [busy, setBusy] = useState(false)
  useEffect(() => {
    // One that is still on its way has no history there.
    if (stove.version === 0) return
    let gone = false
    void workshop.ask('history', { document: stove.id }).then((answer) => {
      if (!gone && answer.ok) setRevisions(answer.value.toReversed())
    })
    return () => {
      gone = true
    }
  }, [stove.id, stove.version])
  const begin = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    setBusy(true)
    const chosen = revisions.find(({ id }) => id === revision) ?? { id: stove.head, hash: '' }
    const trial = await startTrial({
      stove: { document: stove.id, name: stove.name },
      revision: chosen,
      variant: variant.trim(),
      asBuilt: asBuilt === 'built' ? differs.trim() : '',
      like: copy ? like : null,
      place: null,
      day: today(),
      burnsBefore: before.length,
    })
    go({ at: 'trial', trial })
  }
  return (
    <form className="start-form" onSubmit={(event) => void begin(event)}>
      <label>
        Variant
        <input value={variant} maxLength={80} onChange={(event) => setVariant(event.target.value)} />
        <span className="small muted">
          What tells this stove from its sisters; burns of one name are compared together.
        </span>
      </label>
      {revisions.length > 1 && (
        <label>
          Revision
          <select value={revision} onChange={(event) => setRevision(event.target.value)}>
            {revisions.map(({ id, note, created }) => (
              <option key={id} value={id}>
                {created.slice(0, 10)} {note === '' ? 'without a note' : note.slice(0, 60)}
              </option>
            ))}
          </select>
        </label>
      )}
      <fieldset className="trial-choice">
        <legend>The tin stands there</legend>
        <label>
          <input type="radio" name="as" checked={asBuilt === 'drawn'} onChange={() => setAsBuilt('drawn')} />
          as drawn
        </label>
        <label>
          <input type="radio" name="as" checked={asBuilt === 'built'} onChange={() => setAsBuilt('built')} />
          not quite as drawn
        </label>
      </fieldset>
      {asBuilt === 'built' && (
        <label>
          Where it differs
          <textarea
            rows={3}
            maxLength={2000}
            value={differs}
            onChange={(event) => setDiffers(event.target.value)}
          />
        </label>
      )}
      {like !== null && (
        <label className="helped-check">
          <input type="checkbox" checked={copy} onChange={(event) => setWish(event.target.checked)} />
          fuel, pot and instruments as in “{like.head.name}”
          {isInvented(like.draft) && ', whose figures are invented'}
        </label>
      )}
      <button type="submit" data-weight="main" disabled={busy}>
        Start a burn
      </button>
    </form>
  )
}
