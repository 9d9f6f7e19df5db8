import { problemSentence } from '#basis/problem.ts'
import type { Finding } from '#stove/model.ts'
import type { OpeningRef } from '#stove/moves/move.ts'
import { useCellPart } from '../cell/useCell.ts'
import type { StoveEditor } from '../stove/editor.ts'
import type { Selection } from '../stove/selection.ts'
import './findings.css'

const SEVERITIES: Readonly<Record<Finding['severity'], string>> = {
  stop: 'Stops it',
  warn: 'Warning',
  note: 'Note',
}
const ORDER: readonly Finding['severity'][] = ['stop', 'warn', 'note']

/** The opening a finding is about; null where it is about the whole part. */
const refOf = ({ part, opening }: Finding): OpeningRef | null => (opening === null ? null : { part, opening })

/** What the checks say, worst first; each points at its opening in the section. */
export const Findings = ({
  editor,
  selection,
}: {
  readonly editor: StoveEditor
  readonly selection: Selection
}) => {
  useCellPart(editor.state, ({ findings: all, problems: none }) => JSON.stringify([all, none]))
  const { findings, problems } = editor.state.get()
  const sorted = [...findings].sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity))
  return (
    <section className="findings" aria-label="Findings">
      <h2>Findings</h2>
      {problems.length > 0 ? (
        <div role="alert" className="findings-problems">
          <p>What was written last does not read; the stove before it is shown.</p>
          {problems.map((problem) => (
            <p key={`${problem.code} ${problem.field}`}>{problemSentence(problem)}</p>
          ))}
        </div>
      ) : null}
      {sorted.length === 0 ? (
        <p className="muted">Nothing to say against it: holes, fits and areas keep to the rules.</p>
      ) : (
        <ul>
          {sorted.map((finding) => {
            const ref = refOf(finding)
            const point = (over: boolean): void => selection.pointed.set(over ? ref : null)
            return (
              <li
                key={`${finding.code} ${finding.part} ${finding.opening ?? ''} ${finding.sentence}`}
                data-severity={finding.severity}
              >
                <button
                  type="button"
                  data-weight="quiet"
                  onPointerEnter={() => point(true)}
                  onPointerLeave={() => point(false)}
                  onFocus={() => point(true)}
                  onBlur={() => point(false)}
                  onClick={() => selection.open(ref)}
                >
                  <span className="finding-head">
                    <strong>{SEVERITIES[finding.severity]}</strong>
                    <span className="muted">
                      {finding.part}
                      {finding.opening === null ? '' : `, ${finding.opening}`}
                    </span>
                  </span>
                  <span>{finding.sentence}</span>
                  <span className="muted">{finding.fix}</span>
                </button>
              </li>
            )
          })}
        </ul>
      )}
    </section>
  )
}
