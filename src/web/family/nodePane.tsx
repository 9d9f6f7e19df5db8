import { useState } from 'react'
import { differenceLine, stoveDifference } from '#stove/difference/difference.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { STOVE_NAME_MOST } from '#stove/document/names.ts'
import { useCell } from '../cell/useCell.ts'
import { go } from '../routes/here.ts'
import { Link } from '../routes/link.tsx'
import { units } from '../settings/settings.ts'
import { burnFacts } from '../stoveFacts/burnFacts.ts'
import { wordingIn } from '../stoveFacts/wording.ts'
import { newId } from '../workshop/names.ts'
import { stoveFileOf } from '../workshop/stoveText.ts'
import { headOf, newAct, workshop } from '../workshop/workshop.ts'
import { predictedChange, predictedLine } from './predictedLine.ts'
import type { TreeNode } from './tree.ts'

const dayOf = (at: string): string => {
  const time = new Date(at)
  return Number.isNaN(time.getTime()) ? '' : time.toLocaleDateString(undefined, { dateStyle: 'medium' })
}

/** Makes a stove of its own from a revision, and goes there. */
const branchFrom = async (revision: string, name: string): Promise<string | null> => {
  const answer = await workshop.revision(revision)
  if (!answer.ok) return answer.refusal.sentence
  const read = stoveFileOf(answer.value.text, name)
  const id = newId()
  const wanted = {
    id,
    kind: 'stove' as const,
    name,
    revision: newId(),
    text: 'file' in read ? formatStoveFile(read.file) : answer.value.text,
    note: '',
    parents: [revision],
  }
  const said = await workshop.write('create', { act: await newAct(), wanted }).answer
  if (!said.ok) return said.refusal.sentence
  go({ at: 'stove', stove: id })
  return null
}

interface PaneProps {
  readonly node: TreeNode
  readonly trials: readonly string[]
  readonly chosen: boolean
  readonly full: boolean
  readonly onChoose: () => void
}

/** All there is to say of one revision: what was changed, what was predicted, what trials said, and what to do with it. */
export const NodePane = ({ node, trials, chosen, full, onChoose }: PaneProps) => {
  const { revision, from, document } = node
  const inUnits = useCell(units)
  const facts = useCell(burnFacts(revision?.id ?? ''))
  const before = useCell(burnFacts(from ?? ''))
  const [name, setName] = useState('')
  const [sentence, setSentence] = useState<string | null>(null)
  const head = headOf(document)
  if (revision === null) return null
  const isHead = head?.head === revision.id
  const differences =
    facts?.file == null || from === null || before?.file == null
      ? null
      : stoveDifference(before.file, facts.file, wordingIn(inUnits))
  return (
    <section className="family-pane" aria-label="The chosen step">
      <h2>{head?.name ?? 'A stove'}</h2>
      <p className="muted">
        {isHead ? 'As it is now' : 'An earlier step'}, {dayOf(revision.created)}
      </p>
      {revision.note === '' ? null : <p className="family-note">{revision.note}</p>}
      <h3>What was changed</h3>
      {from === null ? (
        <p className="muted">Nothing yet: here it begins.</p>
      ) : differences === null ? (
        <p className="muted">Comparing …</p>
      ) : differences.length === 0 ? (
        <p className="muted">Nothing in the stove itself.</p>
      ) : (
        <ul>
          {differences.map((difference) => (
            <li key={differenceLine(difference)}>
              <strong>{difference.subject}:</strong> {difference.what}
            </li>
          ))}
        </ul>
      )}
      <h3>What was predicted</h3>
      {facts === null ? (
        <p className="muted">Burning it …</p>
      ) : facts.report === null ? (
        <p>{facts.sentence}</p>
      ) : (
        <p>
          {predictedLine(facts.report, inUnits)}
          {before?.report == null ? '' : ` (${predictedChange(facts.report, before.report, inUnits)})`}
        </p>
      )}
      <h3>What trials said</h3>
      {trials.length === 0 ? (
        <p className="muted">No trial of this step yet.</p>
      ) : (
        <ul>
          {trials.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <div className="family-do">
        <Link to={{ at: 'stove', stove: document }} className="button">
          Open {head?.name ?? 'it'}
        </Link>
        <button type="button" aria-pressed={chosen} disabled={!chosen && full} onClick={onChoose}>
          {chosen ? 'Not side by side' : 'Choose for side by side'}
        </button>
      </div>
      <form
        className="family-branch"
        onSubmit={(event) => {
          event.preventDefault()
          void branchFrom(
            revision.id,
            name.trim() === '' ? `${head?.name ?? 'Stove'}, a variant` : name.trim(),
          ).then(setSentence)
        }}
      >
        <label>
          Go on from here as a new stove
          <input
            value={name}
            maxLength={STOVE_NAME_MOST}
            placeholder={`${head?.name ?? 'Stove'}, a variant`}
            onChange={(event) => setName(event.target.value)}
          />
        </label>
        <button type="submit">Branch</button>
      </form>
      {sentence === null ? null : <p role="alert">{sentence}</p>}
    </section>
  )
}
