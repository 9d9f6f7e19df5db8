import { useEffect, useState } from 'react'
import { type BurnLog, entryText, litAt, standing } from './entry.ts'
import { HALF_DAY, runningTime, whenText } from './runningTime.ts'

/** This device's clock, told a few times a second so that no second is skipped. */
const useNow = (): number => {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const beat = setInterval(() => setNow(Math.floor(Date.now() / 1000) * 1000), 200)
    return () => clearInterval(beat)
  }, [])
  return now
}

/** How long the fire is lit, and how long ago the last thing happened. */
export const BurnClock = ({ log, shift }: { readonly log: BurnLog; readonly shift: number }) => {
  const now = useNow() + shift
  const lit = litAt(log)
  const last = standing(log).at(-1)
  // Nobody counts a burn in days: one that is long over has its day, and no clock that runs.
  if (lit !== null && now - lit > HALF_DAY)
    return (
      <div className="burn-clock">
        <p>
          <span className="burn-time">{whenText(lit, now)}</span> <span className="muted">lit that day</span>
        </p>
        {last !== undefined && (
          <p>
            <span className="burn-since">{runningTime(Date.parse(last.at) - lit)}</span>{' '}
            <span className="muted">after lighting, the last: {entryText(last)}</span>
          </p>
        )}
      </div>
    )
  return (
    <div className="burn-clock">
      <p>
        <span className="burn-time" role="timer" aria-label="since it was lit">
          {lit === null ? '–:––' : runningTime(Math.max(0, now - lit))}
        </span>{' '}
        <span className="muted">{lit === null ? 'not lit yet' : 'since lit'}</span>
      </p>
      {last !== undefined && (
        <p>
          <span className="burn-since">{runningTime(Math.max(0, now - Date.parse(last.at)))}</span>{' '}
          <span className="muted">since {entryText(last)}</span>
        </p>
      )}
    </div>
  )
}
