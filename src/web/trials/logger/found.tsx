import type { Alignment } from '#proof/logger/align.ts'
import { aligned } from '#proof/logger/align.ts'
import type { ChannelInspection } from '#proof/logger/inspect.ts'
import type { BurnBook } from '../../atStove/burnBook.ts'
import { type BurnLog, litAt } from '../../atStove/entry.ts'
import { runningTime } from '../../atStove/runningTime.ts'
import type { BoilingThere } from './boilingThere.ts'

const MOST_OUTLIERS = 10

const celsius = (kelvin: number): string => `${(kelvin - 273.15).toFixed(1)} °C`

interface FoundProps {
  readonly inspections: readonly ChannelInspection[]
  readonly alignment: Alignment
  readonly boiling: BoilingThere
  readonly log: BurnLog
  readonly book: BurnBook
}

/** What the readings show: the boil, the burning rate, what stands out; each with how it was found. */
export const Found = ({ inspections, alignment, boiling, log, book }: FoundProps) => {
  const lit = litAt(log)
  const after = (time: number): string => runningTime(aligned(alignment, time) * 1000)
  return (
    <ul className="found">
      {inspections.map(({ name, quantity, boil, burnRate, outliers, outlierMethod }) => (
        <li key={`${name} ${quantity}`}>
          <h4>{name}</h4>
          {quantity === 'temperature' &&
            (boil === null ? (
              <p>
                Never came to stay at the boiling point, {celsius(boiling.temperature)} {boiling.from}.
              </p>
            ) : (
              <>
                <p>
                  Boiled at {after(boil.time)} after lighting, {celsius(boil.temperature)} ({boiling.from}{' '}
                  {celsius(boiling.temperature)}).
                </p>
                <p className="small muted">How: {boil.method}.</p>
                {lit !== null && (
                  <button
                    type="button"
                    onClick={() =>
                      void book.note(
                        { event: 'boil', text: `by the logger, ${name}` },
                        lit + aligned(alignment, boil.time) * 1000 - book.state.get().shift,
                      )
                    }
                  >
                    Note this boil in the log
                  </button>
                )}
              </>
            ))}
          {burnRate !== null && (
            <p className="small muted">
              Burning rate, drawn below: {burnRate.method}; {burnRate.bandwidth} s either way.
            </p>
          )}
          {outliers.length === 0 ? (
            <p className="small muted">Nothing stands out. Looked at against: {outlierMethod}.</p>
          ) : (
            <details>
              <summary>
                {outliers.length === 1 ? 'One reading stands' : `${outliers.length} readings stand`} out:
                ringed in the picture, left where it is read
              </summary>
              <ul className="small trial-said">
                {outliers.slice(0, MOST_OUTLIERS).map((one) => (
                  <li key={one.line}>
                    Line {one.line}, {after(one.time)}:{' '}
                    {quantity === 'temperature'
                      ? `${celsius(one.value)} where ${celsius(one.expected)} was expected`
                      : `${(one.value * 1000).toFixed(1)} g where ${(one.expected * 1000).toFixed(1)} g was expected`}
                  </li>
                ))}
                {outliers.length > MOST_OUTLIERS && <li>{outliers.length - MOST_OUTLIERS} more.</li>}
              </ul>
              <p className="small muted">Found against: {outlierMethod}.</p>
            </details>
          )}
        </li>
      ))}
    </ul>
  )
}
