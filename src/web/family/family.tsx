import './family.css'
import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react'
import { stoveDifference } from '#stove/difference/difference.ts'
import { MOST_BESIDE } from '../bench/places.ts'
import { useCell } from '../cell/useCell.ts'
import { MakingCautions } from '../plan/cautions.tsx'
import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'
import { units } from '../settings/settings.ts'
import { burnFacts } from '../stoveFacts/burnFacts.ts'
import { wordingIn } from '../stoveFacts/wording.ts'
import { allTrials, watchTrials } from '../trials/allTrials.ts'
import { documents, headOf } from '../workshop/workshop.ts'
import { NodePane } from './nodePane.tsx'
import { predictedLine } from './predictedLine.ts'
import { familyTree, type TreeLine, treeLines, treeMove } from './tree.ts'
import { trialLines } from './trialLines.ts'
import { useFamily } from './useFamily.ts'

const Line = ({
  line,
  here,
  chosen,
  trials,
}: {
  readonly line: TreeLine
  readonly here: boolean
  readonly chosen: boolean
  readonly trials: number
}) => {
  const { node } = line
  const { revision, from } = node
  const inUnits = useCell(units)
  const facts = useCell(burnFacts(revision?.id ?? ''))
  const before = useCell(burnFacts(from ?? ''))
  if (revision === null)
    return (
      <span className="family-stove">
        {headOf(node.document)?.name ?? 'A stove that was taken away'}
        {here ? <span className="muted"> this stove</span> : null}
      </span>
    )
  const differences =
    facts?.file == null || before?.file == null || from === null
      ? null
      : stoveDifference(before.file, facts.file, wordingIn(inUnits))
  const [first, ...more] = differences ?? []
  const what =
    revision.note !== ''
      ? revision.note
      : from === null
        ? 'as it began'
        : first === undefined
          ? differences === null
            ? '…'
            : 'saved without a change'
          : `${first.subject}: ${first.what}${more.length === 0 ? '' : `, and ${more.length} more`}`
  return (
    <span className="family-step">
      <span>
        {chosen ? (
          <span className="family-mark" title="Chosen for side by side">
            ◧{' '}
          </span>
        ) : null}
        {what}
      </span>
      <span className="muted small">
        {facts === null
          ? '…'
          : facts.report === null
            ? 'does not burn'
            : predictedLine(facts.report, inUnits)}
        {trials === 0 ? '' : `; ${trials} ${trials === 1 ? 'trial' : 'trials'}`}
      </span>
    </span>
  )
}

/** The family of a stove as a tree: arrow keys walk it, Enter shows a step, Space takes it for side by side. */
const FamilyTree = ({ stove }: { readonly stove: string }) => {
  const { revisions, sentence } = useFamily(stove)
  const heads = useCell(documents)
  const { trials } = useCell(allTrials)
  useEffect(watchTrials, [])
  const roots = useMemo(() => familyTree(revisions ?? []), [revisions])
  const [closed, setClosed] = useState<ReadonlySet<string>>(new Set())
  const [at, setAt] = useState<string | null>(null)
  const [beside, setBeside] = useState<readonly string[]>([])
  const tree = useRef<HTMLDivElement>(null)
  const lines = useMemo(() => treeLines(roots, closed), [roots, closed])
  const head = heads.find(({ id }) => id === stove)?.head ?? null
  const current = lines.find(({ node }) => node.key === (at ?? head)) ?? lines[0]

  if (revisions === null)
    return sentence === null ? <p role="status">Looking up the family …</p> : <p role="alert">{sentence}</p>
  if (current === undefined) return <p>There is no revision of this stove here.</p>

  const focus = (key: string): void => {
    setAt(key)
    tree.current?.querySelector<HTMLElement>(`[data-key="${CSS.escape(key)}"]`)?.focus()
  }
  const choose = (key: string): void =>
    setBeside((before) =>
      before.includes(key)
        ? before.filter((one) => one !== key)
        : before.length < MOST_BESIDE
          ? [...before, key]
          : before,
    )
  const toggle = (key: string, open: boolean): void =>
    setClosed((before) => {
      const next = new Set(before)
      if (open) next.delete(key)
      else next.add(key)
      return next
    })
  const onKey = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return
    if (event.key === ' ' && current.node.kind === 'revision') {
      event.preventDefault()
      choose(current.node.key)
      return
    }
    const move = treeMove(lines, current.node.key, event.key)
    if (move === null) return
    event.preventDefault()
    if (move.kind === 'go') focus(move.key)
    else toggle(move.key, move.kind === 'open')
  }
  const ofRevision = (revision: string) => trials.filter((trial) => trial.head.aboutRevision === revision)
  return (
    <div className="family-both">
      <div className="family-left">
        {sentence === null ? null : <p role="alert">{sentence}</p>}
        <div
          ref={tree}
          className="family-tree"
          role="tree"
          aria-label="Family tree"
          aria-multiselectable="true"
          onKeyDown={onKey}
        >
          {lines.map((line) => {
            const { node, level, place, of, open } = line
            const leaf = node.children.length === 0
            const chosen = beside.includes(node.key)
            return (
              // biome-ignore lint/a11y/useKeyWithClickEvents: the tree itself listens to the keys of all its lines
              <div
                key={node.key}
                data-key={node.key}
                data-kind={node.kind}
                role="treeitem"
                aria-level={level}
                aria-posinset={place}
                aria-setsize={of}
                aria-selected={chosen}
                aria-current={node.key === current.node.key ? 'true' : undefined}
                {...(leaf ? {} : { 'aria-expanded': open })}
                tabIndex={node.key === current.node.key ? 0 : -1}
                style={{ paddingLeft: `${0.5 + 1.25 * (level - 1)}rem` }}
                onClick={(event) => {
                  focus(node.key)
                  const twig = (event.target as Element).closest('.family-twig') !== null
                  if (twig && !leaf) toggle(node.key, !open)
                }}
              >
                <span className="family-twig" aria-hidden="true">
                  {leaf ? '' : open ? '▾' : '▸'}
                </span>
                <Line
                  line={line}
                  here={node.document === stove}
                  chosen={chosen}
                  trials={node.revision === null ? 0 : ofRevision(node.revision.id).length}
                />
              </div>
            )
          })}
        </div>
        <div className="family-beside" aria-live="polite">
          {beside.length < 2 ? (
            <p className="muted small">
              {beside.length === 0 ? 'Choose two to four steps (Space)' : 'Choose one more'} to set them side
              by side.
            </p>
          ) : (
            <Link to={{ at: 'beside', stoves: beside }} className="button">
              Set {beside.length} side by side
            </Link>
          )}
        </div>
      </div>
      {current.node.revision === null ? (
        <section className="family-pane" aria-label="The chosen stove">
          <h2>{headOf(current.node.document)?.name ?? 'A stove that was taken away'}</h2>
          <p className="muted">
            {current.node.children.length} {current.node.children.length === 1 ? 'step' : 'steps'}; choose one
            to see what was changed.
          </p>
          <div className="family-do">
            <Link to={{ at: 'stove', stove: current.node.document }} className="button">
              Open it
            </Link>
          </div>
        </section>
      ) : (
        <NodePane
          key={current.node.key}
          node={current.node}
          trials={trialLines(ofRevision(current.node.revision.id))}
          chosen={beside.includes(current.node.key)}
          full={beside.length >= MOST_BESIDE}
          onChoose={() => choose(current.node.key)}
        />
      )}
    </div>
  )
}

export const Family = ({ place }: { readonly place: Extract<Place, { readonly at: 'family' }> }) => (
  <div className="family">
    <h1>Family</h1>
    <FamilyTree key={place.stove} stove={place.stove} />
    <p className="muted small">
      Predictions are of a calm, mild day, with each stove’s own fuel and one litre; they are no measurements.
    </p>
    <MakingCautions />
  </div>
)
