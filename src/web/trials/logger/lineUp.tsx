import { useId, useState } from 'react'
import type { TimeMapping } from '#proof/logger/mapping.ts'
import { momentText } from '#proof/logger/moment.ts'
import { entryText } from '../../atStove/entry.ts'
import { runningTime } from '../../atStove/runningTime.ts'
import type { LoggedMoment } from './alignForm.tsx'

const STEPS = [-10, -1, 1, 10] as const

interface LineUpProps {
  readonly time: TimeMapping
  readonly moments: readonly LoggedMoment[]
  /** The mark on the curves, by the logger's clock [s]; null: none yet. */
  readonly picked: number | null
  /** When the water boiled by the logger's clock, if it was seen [s]. */
  readonly boil: number | null
  readonly onPick: (logger: number) => void
  readonly onMatch: (moment: LoggedMoment, logger: number) => void
}

/** One moment on both clocks: picked in the log here, and on the curves above. */
export const LineUp = ({ time, moments, picked, boil, onPick, onMatch }: LineUpProps) => {
  const [chosen, setChosen] = useState('')
  const id = useId()
  const moment = moments.find(({ entry }) => entry.id === chosen) ?? moments[0]
  const boiled = moments.find(({ entry }) => 'event' in entry && entry.event === 'boil')
  return (
    <fieldset className="align-way">
      <legend>Line up at a moment that both saw</legend>
      <p className="small muted">
        Press the curves where it happened: a mark stands there. By keyboard: go to the chart and move the
        mark with Shift and the arrow keys.
      </p>
      <div className="log-add">
        <label>
          In the log
          <select value={moment?.entry.id ?? ''} onChange={(change) => setChosen(change.target.value)}>
            {moments.map(({ entry, after }) => (
              <option key={entry.id} value={entry.id}>
                {runningTime(after * 1000)} {entryText(entry)}
              </option>
            ))}
          </select>
        </label>
        <div className="align-mark">
          <span id={id}>The mark, by the logger</span>
          <div className="align-steps">
            <output aria-labelledby={id}>{picked === null ? 'no mark yet' : momentText(time, picked)}</output>
            {STEPS.map((step) => (
              <button
                key={step}
                type="button"
                disabled={picked === null}
                aria-label={`Mark ${Math.abs(step)} s ${step < 0 ? 'earlier' : 'later'}`}
                onClick={() => picked !== null && onPick(picked + step)}
              >
                {step < 0 ? '−' : '+'}
                {Math.abs(step)} s
              </button>
            ))}
          </div>
        </div>
        <button
          type="button"
          disabled={picked === null || moment === undefined}
          onClick={() => moment !== undefined && picked !== null && onMatch(moment, picked)}
        >
          Line up here
        </button>
        {boil !== null && boiled !== undefined && (
          <button type="button" onClick={() => onMatch(boiled, boil)}>
            Match the boil seen by both
          </button>
        )}
      </div>
    </fieldset>
  )
}
