import { useEffect, useMemo, useState } from 'react'
import { type Alignment, align, aligned } from '#proof/logger/align.ts'
import type { ChannelInspection } from '#proof/logger/inspect.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import type { BurnBook } from '../../atStove/burnBook.ts'
import { type BurnLog, entryText, litAt, standing } from '../../atStove/entry.ts'
import type { Draft } from '../draft.ts'
import { AlignForm } from './alignForm.tsx'
import { askLogger } from './askLogger.ts'
import { boilingThere } from './boilingThere.ts'
import type { ChartDot, ChartMark } from './chartOptions.ts'
import { byClocks, type Curve, curveOf, loggerTime } from './curves.ts'
import { Found } from './found.tsx'
import type { KeptFile } from './keptFiles.ts'
import { LoggerChart } from './loggerChart.tsx'
import { TakeReadings } from './takeReadings.tsx'
import type { Reading } from './useLoggerFile.ts'

interface ReadingsProps {
  readonly file: KeptFile
  readonly readout: Extract<Reading, { readonly kind: 'read' }>
  readonly draft: Draft
  readonly log: BurnLog
  readonly book: BurnBook
  readonly onDraft: (change: (now: Draft) => Draft) => void
  readonly onChange: (change: Partial<KeptFile>) => void
}

const GRAMS_A_MINUTE = 60_000

/** Nothing matched: the clocks are taken to run alike, so far apart as was said. */
const bySlider = (offset: number): Alignment => ({
  offset,
  rate: 1,
  residuals: [],
  cautions: [],
})

const marksOf = (log: BurnLog): readonly ChartMark[] => {
  const lit = litAt(log)
  return lit === null
    ? []
    : standing(log).map((entry) => ({
        x: (Date.parse(entry.at) - lit) / 60_000,
        label: entryText(entry).slice(0, 24),
      }))
}

const dotsOf = (inspections: readonly ChannelInspection[], alignment: Alignment): readonly ChartDot[] =>
  inspections.flatMap(({ quantity, outliers }) =>
    outliers.map(
      ({ time, value }): ChartDot => ({
        x: aligned(alignment, time) / 60,
        y: quantity === 'temperature' ? value - 273.15 : value * 1000,
        unit: quantity === 'temperature' ? '°C' : 'g',
      }),
    ),
  )

const NO_DOTS: readonly ChartDot[] = []

/** The burning rate of everything that stood on a scale, as a curve of its own [g/min]. */
const rateCurves = (inspections: readonly ChannelInspection[], alignment: Alignment): readonly Curve[] =>
  inspections.flatMap(({ name, burnRate }) =>
    burnRate === null || burnRate.time.length === 0
      ? []
      : [
          {
            name,
            unit: 'g/min' as const,
            x: Array.from(burnRate.time, (time) => aligned(alignment, time) / 60),
            y: Array.from(burnRate.rate, (rate) => rate * GRAMS_A_MINUTE),
          },
        ],
  )

/** How long after lighting the first reading was, by the time of day that both show [s]; null: not told. */
const clocksOf = (log: BurnLog, { time }: Mapping, first: number): number | null => {
  const lit = litAt(log)
  if (lit === null || !Number.isFinite(first)) return null
  const here = new Date(lit)
  const ofDay = here.getHours() * 3600 + here.getMinutes() * 60 + here.getSeconds()
  return byClocks(time.form, first, { ofDay, since1970: lit / 1000 })
}

/** Readings beside the log: brought onto its time, drawn, looked through. */
export const Readings = ({ file, readout, draft, log, book, onDraft, onChange }: ReadingsProps) => {
  const { log: logged, mapping } = readout
  const [inspections, setInspections] = useState<readonly ChannelInspection[] | null>(null)
  const [picked, setPicked] = useState<number | null>(null)
  const boiling = useMemo(() => boilingThere(draft), [draft])
  const partIndex = Math.min(file.part, logged.parts.length - 1)
  const part = logged.parts[partIndex]
  useEffect(() => {
    let gone = false
    setInspections(null)
    void askLogger({
      kind: 'inspect',
      text: file.text,
      mapping,
      part: partIndex,
      boilingPoint: boiling.temperature,
    }).then((found) => {
      if (!gone) setInspections(found)
    })
    return () => {
      gone = true
    }
  }, [file.text, mapping, partIndex, boiling.temperature])
  const first = Math.min(...(part?.channels ?? []).map(({ time }) => time[0] ?? Number.POSITIVE_INFINITY))
  const alignment = useMemo(
    () => align(file.matches) ?? bySlider(file.offset - (Number.isFinite(first) ? first : 0)),
    [file.matches, file.offset, first],
  )
  const curves = useMemo(
    () =>
      (part?.channels ?? [])
        .filter(({ time }) => time.length > 0)
        .map((channel) => curveOf(channel, alignment)),
    [part, alignment],
  )
  const marks = useMemo(() => marksOf(log), [log])
  const dots = useMemo(
    () => (inspections === null ? NO_DOTS : dotsOf(inspections, alignment)),
    [inspections, alignment],
  )
  const rates = useMemo(
    () => (inspections === null ? [] : rateCurves(inspections, alignment)),
    [inspections, alignment],
  )
  if (part === undefined || curves.length === 0) return <p>No readings could be read from it.</p>
  const pick = (minutes: number): void => setPicked(loggerTime(alignment, minutes * 60))
  const mark = picked === null ? null : aligned(alignment, picked) / 60
  return (
    <>
      {logged.parts.length > 1 && (
        <label>
          The logger’s clock began anew{' '}
          {logged.parts.length === 2 ? 'once' : `${logged.parts.length - 1} times`}. Readings of
          <select value={partIndex} onChange={(event) => onChange({ part: Number(event.target.value) })}>
            {readout.preview.parts.map(({ firstLine, lastLine, lines }, i) => (
              <option key={firstLine} value={i}>
                lines {firstLine} to {lastLine} ({lines} readings)
              </option>
            ))}
          </select>
        </label>
      )}
      <LoggerChart
        label="Readings over time"
        curves={curves}
        marks={marks}
        dots={dots}
        picked={mark}
        onPick={pick}
      />
      <section aria-label="Bring the clocks together">
        <h3>Bring the clocks together</h3>
        <AlignForm
          time={mapping.time}
          log={log}
          alignment={alignment}
          matches={file.matches}
          offset={file.offset}
          first={Number.isFinite(first) ? first : 0}
          clocks={clocksOf(log, mapping, first)}
          picked={picked}
          boil={inspections?.find(({ boil }) => boil !== null)?.boil?.time ?? null}
          onPick={setPicked}
          onMatches={(matches) => onChange({ matches })}
          onOffset={(offset) => onChange({ offset, matches: [] })}
        />
      </section>
      {inspections === null ? (
        <p role="status">Looking through the readings …</p>
      ) : (
        <section aria-label="What the readings show">
          <h3>What the readings show</h3>
          <Found inspections={inspections} alignment={alignment} boiling={boiling} log={log} book={book} />
          {rates.length > 0 && (
            <LoggerChart
              label="Burning rate"
              curves={rates}
              marks={marks}
              dots={NO_DOTS}
              picked={mark}
              onPick={pick}
            />
          )}
        </section>
      )}
      <TakeReadings
        channels={part.channels}
        inspections={inspections}
        time={mapping.time}
        alignment={alignment}
        together={file.matches.length > 0 || file.offset !== 0}
        draft={draft}
        onDraft={onDraft}
      />
    </>
  )
}
