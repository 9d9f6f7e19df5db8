import { useEffect } from 'react'
import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'
import { solver } from '../solve/solver.ts'
import { isEditor, useStoveEditor } from '../workshop/useStoveEditor.ts'
import { StoveBench } from './stoveBench.tsx'

/** The stove on the bench, or a sentence why it is not there. */
export const StoveScreen = ({ place }: { readonly place: Extract<Place, { readonly at: 'stove' }> }) => {
  const open = useStoveEditor(place.stove)
  useEffect(() => solver.wake(), [])
  if (isEditor(open)) return <StoveBench key={place.stove} editor={open} />
  if ('loading' in open)
    return (
      <p className="laying-out" role="status">
        Laying the stove on the bench …
      </p>
    )
  return (
    <div className="mishap">
      <h1>This stove is not on the bench</h1>
      <p>{open.sentence}</p>
      <p>
        <Link to={{ at: 'home' }}>All stoves of the workshop</Link>
      </p>
    </div>
  )
}
