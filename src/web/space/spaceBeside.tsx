import { lazy, Suspense, useEffect, useRef, useState } from 'react'
import { useCell } from '../cell/useCell.ts'
import type { StoveEditor } from '../stove/editor.ts'
import type { Selection } from '../stove/selection.ts'

const Space = lazy(() => import('./space.tsx').then((room) => ({ default: room.Space })))

interface SpaceBesideProps {
  readonly editor: StoveEditor
  readonly selection: Selection
}

const Shown = ({ editor, selection }: SpaceBesideProps) => {
  const opened = useCell(selection.opened)
  const pointed = useCell(selection.pointed)
  return <Space editor={editor} chosen={pointed ?? opened} first="cut" />
}

/**
 * The stove in space beside its section: what is pointed at there stands out here. It is loaded when somebody comes to see
 * it, for a stove that is dragged must not wait for one that nobody looks at.
 */
export const SpaceBeside = ({
  editor,
  selection,
  asked = false,
}: SpaceBesideProps & {
  /** Somebody asked for this very thing: it is not waited for until it comes in sight. */
  readonly asked?: boolean
}) => {
  const place = useRef<HTMLElement>(null)
  const [seen, setSeen] = useState(asked)
  useEffect(() => {
    const section = place.current
    if (section === null || seen) return
    const watch = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true)
    })
    watch.observe(section)
    return () => watch.disconnect()
  }, [seen])
  return (
    <section ref={place} className="space-beside" aria-label="In space">
      <h2>In space</h2>
      {seen ? (
        <Suspense fallback={<p className="muted">Loading …</p>}>
          <Shown editor={editor} selection={selection} />
        </Suspense>
      ) : null}
    </section>
  )
}
