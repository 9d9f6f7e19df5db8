import './logger.css'
import { type ChangeEvent, type DragEvent, useState } from 'react'
import type { BurnBook } from '../../atStove/burnBook.ts'
import type { BurnLog } from '../../atStove/entry.ts'
import type { Draft } from '../draft.ts'
import { PreviewTable } from './previewTable.tsx'
import { Questions } from './questions.tsx'
import { Readings } from './readings.tsx'
import { useLoggerFile } from './useLoggerFile.ts'

/** So long a file is not a burn's [bytes]. */
const MOST = 60_000_000

interface LoggerDeskProps {
  readonly trial: string
  readonly draft: Draft
  readonly log: BurnLog
  readonly book: BurnBook
  readonly onDraft: (change: (now: Draft) => Draft) => void
}

/** The readings of a thermocouple or scale logger, laid beside the log. */
export const LoggerDesk = ({ trial, draft, log, book, onDraft }: LoggerDeskProps) => {
  const logger = useLoggerFile(trial)
  const [over, setOver] = useState(false)
  const [tooLarge, setTooLarge] = useState<string | null>(null)
  const { file, reading } = logger
  const take = async (given: File | undefined): Promise<void> => {
    if (given === undefined) return
    if (given.size > MOST) {
      setTooLarge(`${given.name} has ${(given.size / 1e6).toFixed(0)} MB; allowed are ${MOST / 1e6} MB.`)
      return
    }
    setTooLarge(null)
    logger.take(given.name, await given.text())
  }
  const drop = (event: DragEvent): void => {
    event.preventDefault()
    setOver(false)
    void take(event.dataTransfer.files[0])
  }
  return (
    <div className="logger">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is the shorter way; the field inside is the other */}
      <div
        className="logger-drop"
        data-over={over}
        onDragOver={(event) => {
          event.preventDefault()
          setOver(true)
        }}
        onDragLeave={() => setOver(false)}
        onDrop={drop}
      >
        <label>
          Drop a logger’s file here (CSV), or choose one
          <input
            type="file"
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            onChange={(event: ChangeEvent<HTMLInputElement>) => {
              void take(event.target.files?.[0])
              event.target.value = ''
            }}
          />
        </label>
        {file !== null && (
          <p>
            {file.name}{' '}
            <button type="button" data-weight="quiet" onClick={logger.drop}>
              take it away
            </button>
          </p>
        )}
        <p className="small muted">
          The file stays in this browser. What you take from it (the boil, temperatures) goes into the trial.
        </p>
      </div>
      <div role="status">
        {tooLarge !== null && <p data-fault="true">{tooLarge}</p>}
        {reading.kind === 'looking' && <p>Looking at the file …</p>}
        {logger.said !== null && <p>{logger.said}</p>}
      </div>
      {reading.kind === 'refused' && (
        <p data-fault="true" role="alert">
          {reading.sentence}
        </p>
      )}
      {reading.kind === 'asking' && <Questions questions={reading.questions} onAnswer={logger.answer} />}
      {reading.kind === 'read' && file !== null && (
        <>
          <section aria-label="How the file was read">
            <p>
              {reading.log.read} lines of readings.{' '}
              {reading.by === null ? '' : `Read as “${reading.by}” was read last time. `}
            </p>
            <PreviewTable
              preview={reading.preview}
              mapping={reading.mapping}
              findings={reading.log.findings}
            />
            <p className="trial-actions">
              <button type="button" onClick={() => logger.keepForNextTime(file.name)}>
                Read files of this logger so next time
              </button>
              <button type="button" onClick={logger.lookAnew}>
                Look at it anew
              </button>
            </p>
          </section>
          <Readings
            file={file}
            readout={reading}
            draft={draft}
            log={log}
            book={book}
            onDraft={onDraft}
            onChange={logger.change}
          />
        </>
      )}
    </div>
  )
}
