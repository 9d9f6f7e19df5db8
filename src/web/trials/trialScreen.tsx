import './trials.css'
import './desk.css'
import './form.css'
import './print.css'
import { lazy, Suspense, useDeferredValue, useMemo, useState } from 'react'
import { trialsCsv } from '#proof/trial/exchange/records.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { BURN_CAUTIONS } from '../atStove/burnCautions.ts'
import { CorrectEntry } from '../atStove/correctEntry.tsx'
import type { Entry } from '../atStove/entry.ts'
import { Sheet } from '../atStove/sheet.tsx'
import { clockWords, countWords, lineWords } from '../atStove/syncWords.ts'
import { useBurnBook } from '../atStove/useBurnBook.ts'
import { useCell } from '../cell/useCell.ts'
import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'
import { BurnLine } from './burnLine.tsx'
import { changed, type Draft, trialSoFar, wholeFile } from './draft.ts'
import { fileName, handOver } from './handOver.ts'
import { LogTable } from './logTable.tsx'
import { Metrics } from './metrics.tsx'
import { PhaseForm } from './phaseForm.tsx'
import { Photos } from './photos.tsx'
import { PredictedBurn } from './predicted/predictedBurn.tsx'
import { StillToSay } from './stillToSay.tsx'
import { TrialForm } from './trialForm.tsx'
import {
  type OpenTrial,
  type TrialDocument,
  type TrialKeeping,
  useTrialDocument,
} from './useTrialDocument.ts'
import { WentWrong } from './wentWrong.tsx'

/** Its chart is as large as the rest of the desk: fetched beside it. */
const LoggerDesk = lazy(() =>
  import('./logger/loggerDesk.tsx').then(({ LoggerDesk: desk }) => ({ default: desk })),
)

const KEEPING_WORDS: Readonly<Record<TrialKeeping['kind'], string>> = {
  kept: 'Kept in the workshop',
  keeping: 'Keeping …',
  'kept here': 'Kept in this browser, on its way to the workshop',
  conflict: 'Changed twice',
  'not kept': 'Not kept',
}

const Keeping = ({
  keeping,
  document,
}: {
  readonly keeping: TrialKeeping
  readonly document: TrialDocument
}) => (
  <div className="trial-keeping">
    <p role="status" data-keeping={keeping.kind}>
      {KEEPING_WORDS[keeping.kind]}
    </p>
    {'sentence' in keeping && <p>{keeping.sentence}</p>}
    {keeping.kind === 'conflict' && (
      <p className="trial-actions">
        <button type="button" onClick={() => void document.settle(true)}>
          Keep mine on top
        </button>
        <button type="button" onClick={() => void document.settle(false)}>
          Take theirs
        </button>
      </p>
    )}
  </div>
)

type Opened = Extract<OpenTrial, { readonly kind: 'open' }>

const Desk = ({
  trial,
  open,
  document,
}: {
  readonly trial: string
  readonly open: Opened
  readonly document: TrialDocument
}) => {
  const book = useBurnBook(trial)
  const burn = useCell(book.state)
  const [wrongEntry, setWrongEntry] = useState<Entry | null>(null)
  const { draft } = open
  // Typing goes first; the metrics follow when there is time.
  const calm = useDeferredValue(draft)
  const soFar = useMemo(() => trialSoFar(calm, burn.log), [calm, burn.log])
  const onDraft = (change: (now: Draft) => Draft): void => document.change(change)
  const form = {
    draft,
    wrong: soFar.wrong,
    onChange: (path: Parameters<typeof changed>[1], value: Parameters<typeof changed>[2]) =>
      onDraft((now) => changed(now, path, value)),
  }
  const line = lineWords(burn)
  const clock = clockWords(burn.shift)
  return (
    <div className="desk">
      <header className="desk-head">
        <h1>{typeof draft.name === 'string' && draft.name !== '' ? draft.name : open.name}</h1>
        <Keeping keeping={open.keeping} document={document} />
        <nav className="trial-actions" aria-label="This trial">
          <Link className="button" data-weight="main" to={{ at: 'burn', trial }}>
            At the stove
          </Link>
          {open.stove !== null && (
            <Link className="button" to={{ at: 'trials', stove: open.stove }}>
              All burns of this stove
            </Link>
          )}
          <button
            type="button"
            onClick={() =>
              handOver(
                fileName(open.name, '.trial.json'),
                formatTrialFile(wholeFile(draft, burn.log)),
                'application/json',
              )
            }
          >
            Save as a file
          </button>
          <button
            type="button"
            onClick={() =>
              handOver(fileName(open.name, '.trial.csv'), trialsCsv([wholeFile(draft, burn.log)]), 'text/csv')
            }
          >
            Save as a table (CSV)
          </button>
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </nav>
        <ul className="desk-cautions small">
          {BURN_CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </header>
      <StillToSay missing={soFar.missing} wrong={soFar.wrong} />
      <section aria-labelledby="desk-log">
        <h2 id="desk-log">What happened</h2>
        <p className="small">{[countWords(burn), line, clock].filter((said) => said !== null).join('. ')}.</p>
        <BurnLine log={burn.log} />
        <LogTable log={burn.log} book={book} onPick={setWrongEntry} />
      </section>
      <section aria-labelledby="desk-phases">
        <h2 id="desk-phases">Weighed and read</h2>
        <PhaseForm {...form} log={burn.log} onDraft={onDraft} />
      </section>
      <section aria-labelledby="desk-logger">
        <h2 id="desk-logger">Readings of a logger</h2>
        <Suspense fallback={<p role="status">Fetching the chart …</p>}>
          <LoggerDesk trial={trial} draft={calm} log={burn.log} book={book} onDraft={onDraft} />
        </Suspense>
      </section>
      {soFar.trial !== null && <Metrics trial={soFar.trial} />}
      {soFar.trial !== null && open.stoveRevision !== null && (
        <section aria-labelledby="desk-predicted">
          <h2 id="desk-predicted">Was the prediction right?</h2>
          <PredictedBurn trial={soFar.trial} revision={open.stoveRevision} />
        </section>
      )}
      <section aria-labelledby="desk-photos">
        <h2 id="desk-photos">Photos</h2>
        <Photos trial={trial} />
      </section>
      <section aria-labelledby="desk-set-up">
        <h2 id="desk-set-up">How it was set up</h2>
        <WentWrong draft={draft} onDraft={onDraft} />
        <TrialForm {...form} />
      </section>
      <Sheet open={wrongEntry !== null} onClose={() => setWrongEntry(null)}>
        {wrongEntry !== null && (
          <CorrectEntry
            entry={wrongEntry}
            onCorrect={(change) => {
              setWrongEntry(null)
              if (Object.keys(change).length > 0) void book.correct(wrongEntry, change)
            }}
            onTakeBack={() => {
              setWrongEntry(null)
              void book.takeBack(wrongEntry)
            }}
          />
        )}
      </Sheet>
    </div>
  )
}

/** One burn on the desk: what happened, what was weighed, what it came to. */
export const TrialScreen = ({ place }: { readonly place: Extract<Place, { readonly at: 'trial' }> }) => {
  const [open, document] = useTrialDocument(place.trial)
  if (open.kind === 'loading') return <p role="status">Fetching the trial …</p>
  if (open.kind === 'gone')
    return (
      <div className="desk">
        <h1>This trial is not here</h1>
        <p>{open.sentence}</p>
        <Link to={{ at: 'home' }}>Back to the bench</Link>
      </div>
    )
  return <Desk trial={place.trial} open={open} document={document} />
}
