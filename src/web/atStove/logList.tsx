import { type BurnLog, type Entry, entryText, litAt } from './entry.ts'
import { whenText } from './runningTime.ts'

interface LogListProps {
  readonly entries: readonly Entry[]
  readonly log: BurnLog
  readonly onPick: (entry: Entry) => void
}

/** What was noted, the latest first; a press puts it right. */
export const LogList = ({ entries, log, onPick }: LogListProps) => {
  const lit = litAt(log)
  if (entries.length === 0) return null
  return (
    <section aria-labelledby="burn-log">
      <h2 id="burn-log">Noted so far</h2>
      <ol className="burn-list" reversed>
        {entries.toReversed().map((entry) => (
          <li key={entry.id}>
            <button type="button" data-weight="quiet" onClick={() => onPick(entry)}>
              <span className="burn-list-time">{whenText(Date.parse(entry.at), lit)}</span>
              <span>{entryText(entry)}</span>
              <span className="muted small">put right</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  )
}
