import { useState } from 'react'
import { createCell } from '../cell/cell.ts'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { go } from '../routes/here.ts'
import type { Place } from '../routes/routes.ts'
import { linkState } from '../workshop/link.ts'
import { otherEdits } from '../workshop/otherEdits.ts'
import type { WorkshopEditor } from '../workshop/stoveEditor.ts'
import { isEditor, stoveEditor } from '../workshop/useStoveEditor.ts'
import { forgetRefusal, headOf, refusals } from '../workshop/workshop.ts'
import { say } from './notices.ts'

const NOTHING = createCell(null)

const LinkStrip = () => {
  const link = useCell(linkState)
  if (link.kind === 'up' || link.kind === 'looking') return null
  return (
    <div
      className="strip"
      data-tone="warn"
      data-about={link.kind === 'down' ? 'link' : undefined}
      role="status"
    >
      <p>{link.sentence}</p>
      {link.kind === 'another' ? (
        <button type="button" onClick={() => location.reload()}>
          Load the page again
        </button>
      ) : null}
    </div>
  )
}

const ConflictStrip = ({ editor }: { readonly editor: WorkshopEditor }) => {
  const keeping = useCellPart(editor.state, (state) => state.keeping)
  const [busy, setBusy] = useState(false)
  if (keeping.kind !== 'conflict') return null
  const name = headOf(editor.id)?.name ?? 'Stove'
  const keepMine = async (): Promise<void> => {
    setBusy(true)
    const kept = await editor.keepMine(`${name}, mine`)
    setBusy(false)
    if (!kept.ok) say(kept.sentence)
    else {
      say(`What was here is “${name}, mine” now; “${name}” is as the other window saved it.`)
      go({ at: 'stove', stove: kept.document })
    }
  }
  return (
    <div className="strip" data-tone="warn" role="alert">
      <p>{keeping.sentence}</p>
      <button type="button" disabled={busy} onClick={() => void keepMine()}>
        Keep mine as “{name}, mine”
      </button>
      <button type="button" disabled={busy} onClick={() => void editor.takeTheirs()}>
        Take theirs
      </button>
    </div>
  )
}

const OtherEdits = ({ editor }: { readonly editor: WorkshopEditor }) => {
  const others = useCell(otherEdits(editor.id))
  const [seen, setSeen] = useState<ReadonlySet<string>>(new Set())
  const [first] = others.filter(({ client, number }) => !seen.has(`${client} ${number}`))
  if (first === undefined) return null
  const time = new Date(first.updated).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })
  const letLie = (): void => setSeen(new Set([...seen, `${first.client} ${first.number}`]))
  return (
    <div className="strip" role="status">
      <p>
        Another window has an edit of this stove that is no revision yet ({time}
        {first.undo === null ? '' : `, “${first.undo}”`}).
      </p>
      <button
        type="button"
        onClick={() => {
          letLie()
          if (!editor.takeText('take over the edit of another window', first.text))
            say('That edit does not read as a stove; it stays where it is.')
        }}
      >
        Take it over here
      </button>
      <button type="button" data-weight="quiet" onClick={letLie}>
        Leave it there
      </button>
    </div>
  )
}

const RefusalStrip = () => {
  const [first] = useCell(refusals)
  if (first?.key === undefined) return null
  const { key } = first
  return (
    <div className="strip" data-tone="warn" role="status">
      <p>Done while the workshop was away, and refused when it came back: {first.sentence}</p>
      <button type="button" onClick={() => void forgetRefusal(key)}>
        I have read it
      </button>
    </div>
  )
}

/** Sentences over the work: what the maker has to know or decide. */
export const Strips = ({ place }: { readonly place: Place }) => {
  const open = useCell(place.at === 'stove' ? stoveEditor(place.stove) : NOTHING)
  const editor = open !== null && isEditor(open) ? open : null
  return (
    <div className="strips">
      <LinkStrip />
      <RefusalStrip />
      {editor === null ? null : (
        <>
          <ConflictStrip editor={editor} />
          <OtherEdits editor={editor} />
        </>
      )}
    </div>
  )
}
