import './atStove.css'
import { type ChangeEvent, useEffect, useRef, useState } from 'react'
import { useCell } from '../cell/useCell.ts'
import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'
import type { BurnState } from './burnBook.ts'
import { BurnButtons, type Press } from './burnButtons.tsx'
import { BurnClock } from './burnClock.tsx'
import { BurnCautions } from './cautions.tsx'
import { CorrectEntry } from './correctEntry.tsx'
import { askForRoom, buzz } from './device.ts'
import { type Entry, type EntryWords, entryText, standing } from './entry.ts'
import { HoldsOn } from './holdsOn.tsx'
import { LogList } from './logList.tsx'
import { type Pad, PadBody } from './pads.tsx'
import { photograph } from './photograph.ts'
import { dayTime } from './runningTime.ts'
import { Sheet } from './sheet.tsx'
import { clockWords, countWords, lineWords } from './syncWords.ts'
import { useBurnBook } from './useBurnBook.ts'
import { useAwake } from './wakeLock.ts'

/** A second press of one button within this is a glove that bounced [ms]. */
const BOUNCE = 1200
/** As long is the last entry taken back with one press [ms]. */
const UNDO = 60_000

const Standing = ({ state }: { readonly state: BurnState }) => {
  const line = lineWords(state)
  const clock = clockWords(state.shift)
  return (
    <div className="burn-standing">
      <p role="status" data-waiting={state.waiting > 0}>
        {countWords(state)}
      </p>
      {line !== null && <p className="small">{line}</p>}
      {clock !== null && <p className="small">{clock}</p>}
      {state.trouble !== null && (
        <p className="burn-trouble" role="alert">
          {state.trouble}
        </p>
      )}
    </div>
  )
}

/** The phone at the stove: what happens is noted with one thumb, and is kept whether or not the workshop is in reach. */
export const AtStove = ({ place }: { readonly place: Extract<Place, { readonly at: 'burn' }> }) => {
  const book = useBurnBook(place.trial)
  const state = useCell(book.state)
  const awake = useAwake()
  const [pad, setPad] = useState<Pad | null>(null)
  const [wrong, setWrong] = useState<Entry | null>(null)
  const [last, setLast] = useState<Entry | null>(null)
  const pressedAt = useRef<{ readonly key: string; readonly at: number } | null>(null)
  const camera = useRef<HTMLInputElement>(null)
  useEffect(() => {
    if (last === null) return
    const over = setTimeout(() => setLast(null), UNDO)
    return () => clearTimeout(over)
  }, [last])

  const note = async (words: EntryWords): Promise<void> => {
    setPad(null)
    if (!state.begun) askForRoom()
    const entry = await book.note(words)
    if (entry === null) return
    buzz(40)
    setLast(entry)
  }
  const press = (what: Press): void => {
    if ('event' in what) {
      const now = Date.now()
      const before = pressedAt.current
      pressedAt.current = { key: what.event, at: now }
      if (before?.key === what.event && now - before.at < BOUNCE) return
      void note(what)
    } else if (what.pad === 'photo') camera.current?.click()
    else setPad(what)
  }
  const took = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const [file] = event.target.files ?? []
    event.target.value = ''
    if (file !== undefined) await book.photo(`At the stove, ${dayTime(Date.now())}`, await photograph(file))
  }
  return (
    <div className="burn">
      <header className="burn-head">
        <h1>{state.name === '' ? 'At the stove' : state.name}</h1>
        <BurnClock log={state.log} shift={state.shift} />
        {state.ready && <Standing state={state} />}
      </header>
      {state.ready ? <BurnButtons log={state.log} onPress={press} /> : <p role="status">Opening the log …</p>}
      <input
        ref={camera}
        type="file"
        accept="image/*"
        capture="environment"
        aria-label="Photo"
        className="unseen"
        tabIndex={-1}
        onChange={(event) => void took(event)}
      />
      <div className="burn-undo" role="status">
        {last !== null && (
          <>
            <span>
              {entryText(last)} at {dayTime(Date.parse(last.at) - state.shift)}
            </span>
            <button
              type="button"
              onClick={() => {
                void book.takeBack(last)
                setLast(null)
              }}
            >
              Undo
            </button>
          </>
        )}
      </div>
      <nav className="burn-asides" aria-label="Beside the burn">
        <BurnCautions ready={state.ready} begun={state.begun} />
        <Link className="button burn-aside" to={{ at: 'trial', trial: place.trial }}>
          Trial desk
        </Link>
      </nav>
      <HoldsOn awake={awake} />
      <LogList entries={standing(state.log)} log={state.log} onPick={setWrong} />
      <Sheet open={pad !== null} onClose={() => setPad(null)}>
        {pad !== null && <PadBody pad={pad} onDone={(words) => void note(words)} />}
      </Sheet>
      <Sheet open={wrong !== null} onClose={() => setWrong(null)}>
        {wrong !== null && (
          <CorrectEntry
            entry={wrong}
            onCorrect={(change) => {
              setWrong(null)
              if (Object.keys(change).length > 0) void book.correct(wrong, change)
            }}
            onTakeBack={() => {
              setWrong(null)
              if (last?.id === wrong.id) setLast(null)
              void book.takeBack(wrong)
            }}
          />
        )}
      </Sheet>
    </div>
  )
}
