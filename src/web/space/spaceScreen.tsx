import { useState } from 'react'
import { go } from '../routes/here.ts'
import type { Place } from '../routes/routes.ts'
import { openWhenThere } from '../stove/selection.ts'
import { isEditor, useStoveEditor } from '../workshop/useStoveEditor.ts'
import { Space } from './space.tsx'
import type { Chosen } from './stage.ts'

/** One stove in space, on a page of its own. */
export const SpaceScreen = ({ place }: { readonly place: Extract<Place, { readonly at: 'space' }> }) => {
  const editor = useStoveEditor(place.stove)
  const [pointed, setPointed] = useState<Chosen | null>(null)
  if ('loading' in editor) return <p role="status">Fetching the stove …</p>
  if (!isEditor(editor)) return <p role="alert">{editor.sentence}</p>
  return (
    <div className="space-page">
      <h1 className="unseen">In space</h1>
      <Space
        editor={editor}
        first="cut"
        chosen={pointed}
        onPoint={setPointed}
        onPick={() => undefined}
        act={{
          words: 'Change it on the bench',
          go: (chosen) => {
            openWhenThere(place.stove, chosen)
            go({ at: 'stove', stove: place.stove })
          },
        }}
      />
    </div>
  )
}
