import type { Place } from '../routes/routes.ts'
import { isEditor, useStoveEditor } from '../workshop/useStoveEditor.ts'
import { Space } from './space.tsx'

/** One stove in space, on a page of its own. */
export const SpaceScreen = ({ place }: { readonly place: Extract<Place, { readonly at: 'space' }> }) => {
  const editor = useStoveEditor(place.stove)
  if ('loading' in editor) return <p role="status">Fetching the stove …</p>
  if (!isEditor(editor)) return <p role="alert">{editor.sentence}</p>
  return (
    <div className="space-page">
      <h1 className="unseen">In space</h1>
      <Space editor={editor} first="cut" />
    </div>
  )
}
