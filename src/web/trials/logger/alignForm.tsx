import { type Alignment, aligned, type Match } from '#proof/logger/align.ts'
import type { TimeMapping } from '#proof/logger/mapping.ts'
import { momentText } from '#proof/logger/moment.ts'
import { type BurnLog, type Entry, entryText, litAt, standing } from '../../atStove/entry.ts'
import { runningTime } from '../../atStove/runningTime.ts'
import { LineUp } from './lineUp.tsx'

/** An entry of the log and its time after lighting [s]. */
export interface LoggedMoment {
  readonly entry: Entry
  readonly after: number
}

interface AlignProps {
  /** How the logger tells time. */
  readonly time: TimeMapping
  readonly log: BurnLog
  readonly alignment: Alignment
  readonly matches: readonly Match[]
  /** Time after lighting of the logger's first reading, where nothing is matched [s]. */
  readonly offset: number
  /** The logger's first reading by its own clock [s]. */
  readonly first: number
  /** The same offset by the two clocks alone; null: they do not tell. */
  readonly clocks: number | null
  /** The mark on the curves, by the logger's clock [s]; null: none yet. */
  readonly picked: number | null
  /** When the water boiled by the logger's clock, if it was seen [s]. */
  readonly boil: number | null
  readonly onPick: (logger: number) => void
  readonly onMatches: (matches: readonly Match[]) => void
  /** Moves the first reading; what was matched is let go. */
  readonly onOffset: (offset: number) => void
}

/** `0:34 after lighting`, `2:10 before lighting`. */
const fromLighting = (seconds: number): string =>
  `${runningTime(Math.abs(seconds) * 1000)} ${seconds < 0 ? 'before' : 'after'} lighting`

const Slide = ({ offset, clocks, onOffset }: Pick<AlignProps, 'offset' | 'clocks' | 'onOffset'>) => (
  <fieldset className="align-way align-slider">
    <legend>Slide the logger along the log</legend>
    <label>
      Its first reading: {fromLighting(offset)}
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
  </fieldset>
)

const LinedUp = ({
  time,
  alignment,
  matches,
  first,
  onMatches,
  onOffset,
}: Pick<AlignProps, 'time' | 'alignment' | 'matches' | 'first' | 'onMatches' | 'onOffset'>) => {
  const start = Math.round(aligned(alignment, first))
  return (
    <fieldset className="align-way">
      <legend>
        {matches.length === 1 ? 'Lined up at one moment' : `Lined up at ${matches.length} moments`}
      </legend>
      <p>The logger’s first reading: {fromLighting(start)}.</p>
      <ul className="align-matches">
        {matches.map(({ what, logger, log: after }, i) => (
          <li key={what}>
            {what}: {momentText(time, logger)} by the logger, {runningTime(after * 1000)} in the log
            {matches.length > 1 && alignment.residuals[i] !== undefined
              ? `, ${alignment.residuals[i].toFixed(1)} s left over`
              : ''}{' '}
            <button
              type="button"
              data-weight="quiet"
              aria-label={`Take out: ${what}`}
              onClick={() => onMatches(matches.filter((one) => one.what !== what))}
            >
              take out
            </button>
          </li>
        ))}
      </ul>
      <button type="button" onClick={() => onOffset(start)}>
        Let go, and slide from here
      </button>
    </fieldset>
  )
}

/** Brings the logger's clock onto the log: by a slider or a number, or by moments that both have seen. */
export const AlignForm = (props: AlignProps) => {
  const { time, log, alignment, matches, picked, boil, onPick, onMatches } = props
  const lit = litAt(log)
  if (lit === null)
    return <p>Nobody noted when it was lit: add “lit” to the log, and the two can be brought together.</p>
  const moments = standing(log).map((entry) => ({ entry, after: (Date.parse(entry.at) - lit) / 1000 }))
  const match = ({ entry, after }: LoggedMoment, logger: number): void => {
    const what = entryText(entry)
    onMatches([...matches.filter((one) => one.what !== what), { what, logger, log: after }])
  }
  return (
    <div className="align">
      {matches.length === 0 ? <Slide {...props} /> : <LinedUp {...props} />}
      <LineUp time={time} moments={moments} picked={picked} boil={boil} onPick={onPick} onMatch={match} />
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
