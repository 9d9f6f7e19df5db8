import './logger.css'
import { useEffect, useRef, useState } from 'react'
import type { BurnBook } from '../../atStove/burnBook.ts'
import type { BurnLog } from '../../atStove/entry.ts'
import { useCell } from '../../cell/useCell.ts'
import type { Draft } from '../draft.ts'
import { FileDrop } from '../fileDrop.tsx'
import { cameIn, forget, MOST_LOGGER, wasJustLaid } from './comeIn.ts'
import { PreviewTable } from './previewTable.tsx'
import { Questions } from './questions.tsx'
import { Readings } from './readings.tsx'
import { useLoggerFile } from './useLoggerFile.ts'

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
  const [tooLarge, setTooLarge] = useState<string | null>(null)
  const { file, reading } = logger
  const place = useRef<HTMLDivElement>(null)
  const arrived = useCell(cameIn)
  useEffect(() => {
    if (wasJustLaid(trial)) place.current?.closest('section')?.scrollIntoView()
  }, [trial])
  const take = async (given: File | undefined): Promise<void> => {
    if (given === undefined) return
    if (given.size > MOST_LOGGER) {
      setTooLarge(
        `${given.name} has ${(given.size / 1e6).toFixed(0)} MB; allowed are ${MOST_LOGGER / 1e6} MB.`,
      )
      return
    }
    setTooLarge(null)
    logger.take(given.name, await given.text())
  }
  return (
    <div className="logger" ref={place}>
      <FileDrop
        name={file === null ? 'Choose a logger’s file' : 'Choose another file'}
        field="A logger’s file"
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        onFiles={([given]) => void take(given)}
      >
        <p>
          {file === null ? 'or drop it here: a table of readings over time (CSV or text).' : file.name}{' '}
          {file !== null && (
            <button type="button" data-weight="quiet" onClick={logger.drop}>
              take it away
            </button>
          )}
        </p>
        <p className="small muted">
          The file stays in this browser. What you take from it (the boil, temperatures, weights) goes into
          the trial.
        </p>
      </FileDrop>
      {arrived.map((one) => (
        <p key={one.name} className="trial-actions">
          <button
            type="button"
            onClick={() => {
              forget(one)
              logger.take(one.name, one.text)
            }}
          >
            Lay {one.name} beside this burn
          </button>
        </p>
      ))}
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
