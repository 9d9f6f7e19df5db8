import { lazy, type ReactNode, Suspense, useEffect, useRef, useState } from 'react'
import { useCell } from '../cell/useCell.ts'
import type { StoveEditor } from '../stove/editor.ts'
import type { Selection, Where } from '../stove/selection.ts'

const Space = lazy(() => import('./space.tsx').then((room) => ({ default: room.Space })))

interface SpaceBesideProps {
  readonly editor: StoveEditor
  readonly selection: Selection
  readonly picture: Where
  /** Somebody asked for this very thing: it is not waited for until it comes in sight. */
  readonly asked?: boolean
  /** The panel of what was opened here. */
  readonly panel: ReactNode
}

const Shown = ({ editor, selection, picture, panel }: SpaceBesideProps) => {
  const opened = useCell(selection.opened)
  const pointed = useCell(selection.pointed)
  const { side } = useCell(selection.where)
  return (
    <Space
      editor={editor}
      chosen={pointed ?? opened}
      first="cut"
      onPoint={selection.pointed.set}
      onPick={(picked, side) => selection.open(picked, picture, side)}
      act={{ words: 'Change it', go: (chosen) => selection.open(chosen, picture) }}
      over={panel === null ? null : { side, content: panel }}
    />
  )
}

/**
 * The stove in space beside its section: what is pointed at there stands out here, and a hole that is pressed here is open
 * there. It is loaded when somebody comes to see it, for a stove that is dragged must not wait for one that nobody looks at.
 */
export const SpaceBeside = (props: SpaceBesideProps) => {
  const place = useRef<HTMLDivElement>(null)
  const [seen, setSeen] = useState(props.asked === true)
  useEffect(() => {
    const here = place.current
    if (here === null || seen) return
    const watch = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true)
    })
    watch.observe(here)
    return () => watch.disconnect()
  }, [seen])
  return (
    <div ref={place} className="space-beside">
      {seen ? (
        <Suspense
          fallback={
            <p className="muted" role="status">
              Loading …
            </p>
          }
        >
          <Shown {...props} />
        </Suspense>
      ) : null}
    </div>
  )
}
