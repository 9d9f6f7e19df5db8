import { type FormEvent, useState } from 'react'
import { EVENT_KINDS, type EventKind } from '#proof/trial/logSchema.ts'
import type { BurnBook } from '../atStove/burnBook.ts'
import { type BurnLog, type Entry, entryText, litAt, standing } from '../atStove/entry.ts'
import { type Pad, PadBody } from '../atStove/pads.tsx'
import { dayTime, whenText } from '../atStove/runningTime.ts'
import { Sheet } from '../atStove/sheet.tsx'

interface LogTableProps {
  readonly log: BurnLog
  readonly book: BurnBook
  readonly onPick: (entry: Entry) => void
}

/** Those that a page of its own asks about. */
const PADS: Readonly<Partial<Record<EventKind, Pad>>> = {
  'damper to': { pad: 'damper' },
  refuel: { pad: 'refuel' },
  note: { pad: 'note' },
}

/** Minutes and seconds after lighting, as people write them; null: not read [ms]. */
const readAfter = (text: string): number | null => {
  const [, hours = '0', minutes, seconds] = /^(?:(\d+):)?(\d+):(\d{2})$/.exec(text.trim()) ?? []
  return minutes === undefined || seconds === undefined
    ? null
    : ((Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000
}

/** Something that nobody noted at the time. */
const AddEntry = ({ log, book }: Pick<LogTableProps, 'log' | 'book'>) => {
  const [kind, setKind] = useState<EventKind | 'weighed'>('boil')
  const [after, setAfter] = useState('')
  const [pad, setPad] = useState<Pad | null>(null)
  const lit = litAt(log)
  const shift = book.state.get().shift
  const time = lit === null ? null : readAfter(after)
  const at = lit === null || time === null ? undefined : lit + time - shift
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    if (lit !== null && time === null) return
    if (kind === 'weighed') setPad({ pad: 'weigh', of: 'fuel' })
    else if (PADS[kind] !== undefined) setPad(PADS[kind])
    else void book.note({ event: kind }, at)
  }
  return (
    <form className="log-add" onSubmit={submit}>
      <label>
        Add what was not noted
        <select value={kind} onChange={(event) => setKind(event.target.value as EventKind | 'weighed')}>
          {EVENT_KINDS.map((one) => (
            <option key={one}>{one}</option>
          ))}
          <option value="weighed">weighed</option>
        </select>
      </label>
      {lit !== null && (
        <label>
          at, after lighting
          <input
            value={after}
            placeholder="7:12"
            aria-invalid={after !== '' && time === null}
            onChange={(event) => setAfter(event.target.value)}
          />
        </label>
      )}
      <button type="submit" disabled={lit !== null && time === null}>
        Add it
      </button>
      <Sheet open={pad !== null} onClose={() => setPad(null)}>
        {pad !== null && (
          <PadBody
            pad={pad}
            onDone={(words) => {
              setPad(null)
              void book.note(words, at)
            }}
          />
        )}
      </Sheet>
    </form>
  )
}

/** The log line by line, each of which can be put right. */
export const LogTable = ({ log, book, onPick }: LogTableProps) => {
  const entries = standing(log)
  const lit = litAt(log)
  return (
    <>
      {entries.length === 0 ? (
        <p className="muted">
          Nothing is noted yet. At the stove it is one press each; here it can be added.
        </p>
      ) : (
        <table className="log-table">
          <thead>
            <tr>
              <th scope="col">After lighting</th>
              <th scope="col">Time of day</th>
              <th scope="col">What</th>
              <th scope="col">
                <span className="unseen">Put right</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {entries.map((entry) => (
              <tr key={entry.id}>
                <td>{lit === null ? '–' : whenText(Date.parse(entry.at), lit)}</td>
                <td>{dayTime(Date.parse(entry.at))}</td>
                <td>{entryText(entry)}</td>
                <td>
                  <button
                    type="button"
                    data-weight="quiet"
                    aria-label={`Put right: ${entryText(entry)}`}
                    onClick={() => onPick(entry)}
                  >
                    put right
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <AddEntry log={log} book={book} />
    </>
  )
}
