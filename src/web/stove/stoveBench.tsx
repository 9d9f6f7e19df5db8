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
import { createSelection, forgetWanted, type Where, wantedOf } from './selection.ts'
import { Tabs } from './tabs.tsx'
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
  const selection = useMemo(() => createSelection(wantedOf(editor.id)), [editor])
  useEffect(forgetWanted, [])
  useEffect(() => stove.follow(), [stove])
  const opened = useCell(selection.opened)
  const where = useCell(selection.where)
  const close = useCallback(() => selection.open(null), [selection])
  const answered = useAnswered(stove)
  const narrow = useNarrow()
  const wide = useWide()
  const [tab, setTab] = useState('Answers')
  /** Section and space have changed places. */
  const [swapped, setSwapped] = useState(false)
  const panel = opened === null ? null : <OpeningPanel editor={editor} opening={opened} onClose={close} />

  const panelIn = (picture: Where): ReactNode => (narrow || where.picture !== picture ? null : panel)
  const section = (picture: Where): ReactNode => (
    <>
      <Stage
        editor={editor}
        stove={stove}
        selection={selection}
        onOpen={(ref) => selection.open(ref, picture)}
      >
        {(at) => {
          const inside = panelIn(picture)
          return inside === null || at === null ? null : (
            <div
              className="stage-panel"
              style={{
                left: `clamp(0px, ${at.x + 34}px, calc(100% - 21.25rem))`,
                top: 8,
                maxHeight: at.height - 16,
              }}
            >
              {inside}
            </div>
          )
        }}
      </Stage>
      <GhostKey stove={stove} />
    </>
  )
  const space = (picture: Where, asked: boolean): ReactNode => (
    <SpaceBeside
      editor={editor}
      selection={selection}
      picture={picture}
      asked={asked}
      panel={panelIn(picture)}
    />
  )
  const heading = <Heading editor={editor} />
  const answers = <Answers editor={editor} stove={stove} />
  const course = <Course stove={stove} />
  const above = <Above editor={editor} conditions={conditions} selection={selection} />
  const under = <ConditionsPanel editor={editor} conditions={conditions} />
  const findings = <Findings editor={editor} selection={selection} />
  const add = <AddRow editor={editor} selection={selection} />
  const turndown = <TurndownCurve editor={editor} stove={stove} />

  if (narrow)
    return (
      <div className="stove-bench stove-narrow">
        {heading}
        <div className="stove-stage">{section('large')}</div>
        {panel ?? (
          <Tabs
            shown={tab}
            onShow={setTab}
            tabs={[
              { name: 'Answers', content: answers },
              { name: 'Burn', content: course },
              { name: 'From above', content: above },
              { name: 'In space', content: space('below', true) },
              { name: 'Findings', content: findings },
              { name: 'Air', content: <Choke stove={stove} /> },
              { name: 'Turndown', content: turndown },
              { name: 'Weather', content: under },
              { name: 'New row', content: add },
            ]}
          />
        )}
        <Cautions />
      </div>
    )
  return (
    <div className="stove-bench">
      {heading}
      <div className="stove-stage">{swapped ? space('large', true) : section('large')}</div>
      {answers}
      <div className="stove-side">
        {above}
        {wide ? under : null}
      </div>
      <div className="stove-course">{course}</div>
      {answered ? (
        <div className="stove-more">
          <div className="more-said">
            {findings}
            {add}
          </div>
          <div className="more-middle">
            <section className="more-picture" aria-label={swapped ? 'Cut down its middle' : 'In space'}>
              <div className="more-head">
                <h2>{swapped ? 'Cut down its middle' : 'In space'}</h2>
                <button
                  type="button"
                  onClick={() => {
                    close()
                    setSwapped(!swapped)
                    scrollTo({ top: 0 })
                  }}
                >
                  {swapped ? 'Put the section back on top' : 'Show it large'}
                </button>
              </div>
              {swapped ? section('below') : space('below', false)}
            </section>
            {turndown}
          </div>
          <div className="more-air">
            <Choke stove={stove} />
            {wide ? null : under}
          </div>
        </div>
      ) : null}
      <Cautions />
    </div>
  )
}
