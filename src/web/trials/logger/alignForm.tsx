import { useState } from 'react'
import type { Alignment, Match } from '#proof/logger/align.ts'
import type { TimeMapping } from '#proof/logger/mapping.ts'
import { momentText } from '#proof/logger/moment.ts'
import { type BurnLog, entryText, litAt, standing } from '../../atStove/entry.ts'
import { runningTime } from '../../atStove/runningTime.ts'

interface AlignProps {
  /** How the logger tells time. */
  readonly time: TimeMapping
  readonly log: BurnLog
  readonly alignment: Alignment
  readonly matches: readonly Match[]
  /** Time after lighting of the logger's first reading, where nothing is matched [s]. */
  readonly offset: number
  /** The same by the two clocks alone; null: they do not tell. */
  readonly clocks: number | null
  /** Where the chart was pressed, by the logger's clock [s]; null: nowhere yet. */
  readonly picked: number | null
  /** When the water boiled by the logger's clock, if it was seen [s]. */
  readonly boil: number | null
  readonly onMatches: (matches: readonly Match[]) => void
  readonly onOffset: (offset: number) => void
}

/** Brings the logger's clock onto the log: by a slider or a number, or by moments that both have seen. */
export const AlignForm = ({
  time,
  log,
  alignment,
  matches,
  offset,
  clocks,
  picked,
  boil,
  onMatches,
  onOffset,
}: AlignProps) => {
  const lit = litAt(log)
  const events =
    lit === null ? [] : standing(log).map((entry) => ({ entry, after: (Date.parse(entry.at) - lit) / 1000 }))
  const [chosen, setChosen] = useState('')
  const event = events.find(({ entry }) => entry.id === chosen) ?? events[0]
  const boiled = events.find(({ entry }) => 'event' in entry && entry.event === 'boil')
  const add = (what: string, logger: number, after: number): void =>
    onMatches([...matches.filter((one) => one.what !== what), { what, logger, log: after }])
  if (lit === null)
    return <p>Nobody noted when it was lit: add “lit” to the log, and the two can be brought together.</p>
  return (
    <div className="align">
      {matches.length === 0 && (
        <div className="align-slider">
          <label>
            The logger’s first reading:{' '}
            {offset < 0 ? `${runningTime(-offset * 1000)} before` : `${runningTime(offset * 1000)} after`}{' '}
            lighting
            <input
              type="range"
              min={-1800}
              max={1800}
              step={1}
              value={offset}
              onChange={(change) => onOffset(Number(change.target.value))}
            />
          </label>
          <p className="trial-actions">
            <label className="align-number">
              <span className="unseen">First reading after lighting, in seconds</span>
              <input
                type="number"
                step={1}
                value={offset}
                onChange={(change) => onOffset(Number(change.target.value) || 0)}
              />{' '}
              s
            </label>
            {clocks !== null && clocks !== offset && (
              <button type="button" onClick={() => onOffset(clocks)}>
                Go by the two clocks: {clocks} s after lighting
              </button>
            )}
          </p>
        </div>
      )}
      <div className="log-add">
        <label>
          Moment in the log
          <select value={event?.entry.id ?? ''} onChange={(change) => setChosen(change.target.value)}>
            {events.map(({ entry, after }) => (
              <option key={entry.id} value={entry.id}>
                {runningTime(after * 1000)} {entryText(entry)}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          disabled={picked === null || event === undefined}
          onClick={() =>
            event !== undefined && picked !== null && add(entryText(event.entry), picked, event.after)
          }
        >
          {picked === null
            ? 'Press the chart where it happened'
            : `It is ${momentText(time, picked)} by the logger`}
        </button>
        {boil !== null && boiled !== undefined && (
          <button type="button" onClick={() => add('Boil', boil, boiled.after)}>
            Match the boil seen by both
          </button>
        )}
      </div>
      {matches.length > 0 && (
        <ul className="align-matches">
          {matches.map(({ what, logger, log: after }, i) => (
            <li key={what}>
              {what}: {momentText(time, logger)} by the logger, {runningTime(after * 1000)} in the log
              {alignment.residuals[i] === undefined
                ? ''
                : `, ${alignment.residuals[i].toFixed(1)} s left over`}
              <button
                type="button"
                data-weight="quiet"
                onClick={() => onMatches(matches.filter((one) => one.what !== what))}
              >
                take out
              </button>
            </li>
          ))}
        </ul>
      )}
      <div role="status">
        <ul className="small trial-said">
          {alignment.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </div>
    </div>
  )
}
