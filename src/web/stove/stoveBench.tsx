import { type ReactNode, useCallback, useEffect, useMemo, useState } from 'react'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { Above } from '../above/above.tsx'
import { Answers } from '../answers/answers.tsx'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { Course } from '../course/course.tsx'
import { Choke } from '../findings/choke.tsx'
import { Findings } from '../findings/findings.tsx'
import { TurndownCurve } from '../findings/turndown.tsx'
import { OpeningPanel } from '../section/openingPanel.tsx'
import { Stage } from '../section/stage.tsx'
import { conditionsOf } from '../solve/conditions.ts'
import { SpaceBeside } from '../space/spaceBeside.tsx'
import { AddRow } from './addRow.tsx'
import { ConditionsPanel } from './conditionsPanel.tsx'
import type { StoveEditor } from './editor.ts'
import { createLiveStove, type LiveStove } from './liveBurn.ts'
import { useNarrow, useWide } from './roomFor.ts'
import { createSelection } from './selection.ts'
import './stove.css'

const Cautions = () => (
  <section className="stove-cautions small" aria-label="Before you build or burn">
    <h2>Before you build or burn</h2>
    <ul>
      {MAKING_CAUTIONS.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  </section>
)

interface Tab {
  readonly name: string
  readonly content: ReactNode
}

/** One thing at a time, by its word. */
const Tabs = ({ tabs }: { readonly tabs: readonly Tab[] }) => {
  const [shown, setShown] = useState(tabs[0]?.name ?? '')
  const current = tabs.find(({ name }) => name === shown) ?? tabs[0]
  return (
    <div className="stove-tabs">
      <div role="tablist" aria-label="About this stove" className="tab-words">
        {tabs.map(({ name }, i) => (
          <button
            key={name}
            type="button"
            role="tab"
            id={`tab-${i}`}
            aria-controls={`tab-panel-${i}`}
            aria-selected={name === current?.name}
            tabIndex={name === current?.name ? 0 : -1}
            data-weight="quiet"
            onClick={() => setShown(name)}
            onKeyDown={(event) => {
              const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
              if (by === 0) return
              const next = tabs[(i + by + tabs.length) % tabs.length]
              if (next === undefined) return
              setShown(next.name)
              const sibling =
                event.currentTarget.parentElement?.children[(i + by + tabs.length) % tabs.length]
              if (sibling instanceof HTMLElement) sibling.focus()
            }}
          >
            {name}
          </button>
        ))}
      </div>
      {tabs.map(({ name, content }, i) => (
        <div
          key={name}
          role="tabpanel"
          id={`tab-panel-${i}`}
          aria-labelledby={`tab-${i}`}
          hidden={name !== current?.name}
        >
          {name === current?.name ? content : null}
        </div>
      ))}
    </div>
  )
}

const Heading = ({ editor }: { readonly editor: StoveEditor }) => (
  <h1 className="unseen">{useCellPart(editor.state, ({ stove }) => stove.name)} on the bench</h1>
)

/** What the broken lines behind the section are. */
const GhostKey = ({ stove }: { readonly stove: LiveStove }) => {
  const before = useCell(stove.before)
  return before === null ? null : (
    <p className="stage-ghost small muted">
      <span aria-hidden="true" className="ghost-line" /> {before.name}
    </p>
  )
}

/** What lies below the fold comes once the section has its first answer: it is what was come for. */
const useAnswered = (stove: LiveStove): boolean => {
  const there = useCellPart(stove.live, (live) => live !== null)
  const [answered, setAnswered] = useState(false)
  useEffect(() => {
    if (!there) return
    const soon = setTimeout(() => setAnswered(true), 0)
    return () => clearTimeout(soon)
  }, [there])
  return answered
}

/** One stove in the hands of its maker: section, answers and burn, all of them at once alive. */
export const StoveBench = ({ editor }: { readonly editor: StoveEditor }) => {
  const conditions = useMemo(() => conditionsOf(editor.id), [editor])
  const stove = useMemo(
    () => createLiveStove(editor.id, editor.state, editor.parent, conditions),
    [editor, conditions],
  )
  const selection = useMemo(createSelection, [])
  useEffect(() => stove.follow(), [stove])
  const opened = useCell(selection.opened)
  const close = useCallback(() => selection.opened.set(null), [selection])
  const answered = useAnswered(stove)
  const narrow = useNarrow()
  const wide = useWide()
  const panel = opened === null ? null : <OpeningPanel editor={editor} opening={opened} onClose={close} />

  const stage = (
    <Stage editor={editor} stove={stove} selection={selection}>
      {(at) =>
        narrow || panel === null || at === null ? null : (
          <div
            className="stage-panel"
            style={{
              left: Math.max(0, Math.min(at.x + 34, at.layout.width - 340)),
              top: 8,
              maxHeight: at.layout.height - 16,
            }}
          >
            {panel}
          </div>
        )
      }
    </Stage>
  )
  const heading = <Heading editor={editor} />
  const answers = <Answers editor={editor} stove={stove} />
  const course = <Course stove={stove} />
  const above = <Above editor={editor} conditions={conditions} selection={selection} />
  const under = <ConditionsPanel editor={editor} conditions={conditions} />
  const findings = <Findings editor={editor} selection={selection} />
  const add = <AddRow editor={editor} selection={selection} />
  const ghost = <GhostKey stove={stove} />

  if (narrow)
    return (
      <div className="stove-bench stove-narrow">
        {heading}
        <div className="stove-stage">
          {stage}
          {ghost}
        </div>
        {panel === null ? (
          <Tabs
            tabs={[
              { name: 'Answers', content: answers },
              { name: 'Burn', content: course },
              { name: 'From above', content: above },
              { name: 'In space', content: <SpaceBeside editor={editor} selection={selection} asked /> },
              { name: 'Findings', content: findings },
              { name: 'Air', content: <Choke stove={stove} /> },
              { name: 'Turndown', content: <TurndownCurve editor={editor} stove={stove} /> },
              { name: 'Weather', content: under },
              { name: 'New row', content: add },
            ]}
          />
        ) : (
          panel
        )}
        <Cautions />
      </div>
    )
  return (
    <div className="stove-bench">
      {heading}
      <div className="stove-stage">
        {stage}
        {ghost}
      </div>
      {answers}
      <div className="stove-side">
        {above}
        {wide ? under : null}
      </div>
      <div className="stove-course">{course}</div>
      {answered ? (
        <div className="stove-more">
          <div>
            {findings}
            {add}
          </div>
          <SpaceBeside editor={editor} selection={selection} />
          <Choke stove={stove} />
          <TurndownCurve editor={editor} stove={stove} />
          {wide ? null : under}
        </div>
      ) : null}
      <Cautions />
    </div>
  )
}
