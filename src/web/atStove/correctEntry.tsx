import { type FormEvent, useState } from 'react'
import { later } from './burnStore.ts'
import { type Entry, type EntryWords, entryText, isWeighing } from './entry.ts'
import { dayTime } from './runningTime.ts'

const STEPS = [
  { label: '−1 min', by: -60_000 },
  { label: '−10 s', by: -10_000 },
  { label: '−1 s', by: -1000 },
  { label: '+1 s', by: 1000 },
  { label: '+10 s', by: 10_000 },
  { label: '+1 min', by: 60_000 },
] as const

/** The number with its unit that an entry carries, and the words to change it by. */
const carriedBy = (
  entry: Entry,
): {
  readonly label: string
  readonly text: string
  readonly change: (text: string) => Partial<EntryWords>
} | null => {
  if (isWeighing(entry)) return { label: 'Weight', text: entry.mass, change: (mass) => ({ mass }) }
  if (entry.event === 'refuel')
    return { label: 'Weight', text: entry.weight ?? '', change: (weight) => ({ weight }) }
  if (entry.event === 'damper to')
    return { label: 'Bearing', text: entry.turned ?? '', change: (turned) => ({ turned }) }
  return null
}

/** Whether a text is a number with a unit that this entry may carry; what it may be, where it is not. */
const fault = (entry: Entry, text: string): string | null => {
  if (!isWeighing(entry) && entry.event === 'damper to')
    return /^-?\d{1,3}(?:\.\d+)? ?(?:deg|°)$/.test(text) ? null : 'Write it as 20 deg.'
  return /^\d+(?:\.\d+)? ?(?:g|kg|oz|lb)$/.test(text)
    ? null
    : 'Write it with its unit, such as 31 g or 1.1 oz.'
}

interface CorrectProps {
  readonly entry: Entry
  readonly onCorrect: (change: Partial<EntryWords> & { readonly at?: string }) => void
  readonly onTakeBack: () => void
}

/** Its time, its value, its words put right; or all of it taken back. */
export const CorrectEntry = ({ entry, onCorrect, onTakeBack }: CorrectProps) => {
  const [at, setAt] = useState(entry.at)
  const value = carriedBy(entry)
  const [amount, setAmount] = useState(value?.text ?? '')
  const [text, setText] = useState(entry.text ?? '')
  const wrong = value === null ? null : fault(entry, amount.trim())
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    if (wrong !== null) return
    onCorrect({
      ...(at === entry.at ? {} : { at }),
      ...(value === null || amount.trim() === value.text ? {} : value.change(amount.trim())),
      ...(text.trim() === (entry.text ?? '') ? {} : { text: text.trim() || undefined }),
    } as Partial<EntryWords> & { readonly at?: string })
  }
  return (
    <form onSubmit={submit} className="correct">
      <h2 id="burn-pad">{entryText(entry)}</h2>
      <p className="correct-time">
        at <output aria-label="time of day">{dayTime(Date.parse(at))}</output>
      </p>
      <div className="pad-choice correct-steps">
        {STEPS.map(({ label, by }) => (
          <button key={label} type="button" onClick={() => setAt((now) => later(now, by))}>
            {label}
          </button>
        ))}
      </div>
      {value !== null && (
        <label>
          {value.label}
          <input
            value={amount}
            inputMode="decimal"
            aria-invalid={wrong !== null}
            aria-describedby="correct-wrong"
            onChange={(event) => setAmount(event.target.value)}
          />
          <span id="correct-wrong" className="small" role="status">
            {wrong}
          </span>
        </label>
      )}
      <label>
        Remark
        <input value={text} maxLength={1000} onChange={(event) => setText(event.target.value)} />
      </label>
      <button type="submit" className="burn-wide" data-weight="main" disabled={wrong !== null}>
        Put it right
      </button>
      <button type="button" className="burn-wide" onClick={onTakeBack}>
        Take it back: it did not happen
      </button>
    </form>
  )
}
