import { useEffect, useState } from 'react'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { ExplainAnswer } from '../help/explainAnswer.tsx'
import { units } from '../settings/settings.ts'
import type { StoveEditor } from '../stove/editor.ts'
import type { LiveStove } from '../stove/liveBurn.ts'
import { type AnswerBand, type AnswerRow, airShares, answerRows, spokenAnswer } from './rows.ts'
import { COURSES } from './words.ts'
import './answers.css'

/** Room over the highest of a band [1]. */
const OVER = 1.18

const BandMark = ({ low, high, value, text }: AnswerBand) => {
  const most = OVER * Math.max(high, value)
  const at = (figure: number): number => (100 * figure) / most
  return (
    <span className="answer-band">
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
        <path className="answer-rail" d="M0 4H100" />
        <path className="answer-spread" d={`M${at(low)} 4H${at(high)}`} />
        <path className="answer-mark" d={`M${at(value)} 0V8`} />
      </svg>
      <span className="answer-range">{text}</span>
    </span>
  )
}

const Row = ({ row }: { readonly row: AnswerRow }) => (
  <div className="answer" data-answer={row.key}>
    <dt>
      {row.caption}
      <ExplainAnswer answer={row.key} />
      {row.change === null ? null : (
        <span className="answer-change" data-same={row.change.told === 'the same'}>
          {row.change.told}
          <span className="unseen"> {row.change.than}</span>
        </span>
      )}
    </dt>
    <dd>
      <span className="answer-value">{row.value}</span>
      <span className="answer-beside">{row.beside}</span>
      {row.band === null ? (
        BANDED.has(row.key) ? (
          <span className="answer-band answer-empty" />
        ) : null
      ) : (
        <BandMark {...row.band} />
      )}
    </dd>
  </div>
)

/** Answers that get a band: its place is kept while it is drawn, and where there is nothing to draw. */
const BANDED = new Set(['firepower', 'time', 'boil', 'wall'])

/** Said once the hand has come to rest, not with every frame [ms]. */
const SAY_AFTER = 900

const Spoken = ({ sentence }: { readonly sentence: string }) => {
  const [said, setSaid] = useState('')
  useEffect(() => {
    const later = setTimeout(() => setSaid(sentence), SAY_AFTER)
    return () => clearTimeout(later)
  }, [sentence])
  return (
    <p className="unseen" role="status">
      {said}
    </p>
  )
}

const BandsWord = ({ stove }: { readonly stove: LiveStove }) => {
  const bands = useCell(stove.bands)
  if (bands === null) return <p className="answer-bands muted small">Bands follow when your hand rests.</p>
  switch (bands.state) {
    case 'drawing':
    case 'waiting':
      return (
        <p className="answer-bands small">
          <progress value={bands.done} max={bands.of} aria-label="Drawing bands" />
          <button type="button" data-weight="quiet" onClick={stove.stopBands}>
            Stop
          </button>
        </p>
      )
    case 'stopped':
      return (
        <p className="answer-bands small">
          <span className="muted">Stopped.</span>
          <button type="button" data-weight="quiet" onClick={stove.drawBands}>
            Draw the bands
          </button>
        </p>
      )
    case 'there':
      return (
        <p className="answer-bands muted small">
          {bands.answer === null
            ? 'No bands: it does not burn.'
            : `Bars: 5 to 95 % of ${bands.answer.samples} burns with other coefficients.`}
        </p>
      )
  }
}

/** How it burns, in figures, and how far they may be out. */
export const Answers = ({ editor, stove }: { readonly editor: StoveEditor; readonly stove: LiveStove }) => {
  const live = useCell(stove.live)
  const before = useCell(stove.before)
  const bands = useCell(stove.bands)
  const inUnits = useCell(units)
  const broken = useCellPart(editor.state, ({ problems }) => problems.length > 0)
  if (live === null)
    return (
      <section className="answers" aria-label="How it burns">
        <p role="status">Lighting it …</p>
      </section>
    )
  const { burn, moment } = live
  if (burn === null)
    return (
      <section className="answers" aria-label="How it burns">
        <h2 className="answers-course" data-course="does not burn">
          {COURSES['does not burn'].name}
        </h2>
        <p role="status">{live.sentence}</p>
      </section>
    )
  const { name, meaning } = COURSES[burn.course]
  const rows = answerRows(burn, moment, before, bands?.key === live.key ? bands : null, inUnits)
  return (
    <section className="answers" aria-label="How it burns">
      <h2 className="answers-course" data-course={burn.course}>
        {name}
      </h2>
      <p className="answers-meaning small">{burn.stops?.sentence ?? meaning}</p>
      <p className="answers-against small">
        {before === null ? (
          <span className="muted">What you change is set beside this revision.</span>
        ) : (
          <>At the right: beside {before.name}</>
        )}
      </p>
      {broken ? <p className="answers-problem small">The last stove that reads is shown.</p> : null}
      <dl>
        {rows.map((row) => (
          <Row key={row.key} row={row} />
        ))}
      </dl>
      {moment === null ? null : (
        <div className="air-split">
          <h3>Where the air goes</h3>
          <div className="air-bar" aria-hidden="true">
            {airShares(moment).map(({ name: way, share }) => (
              <span key={way} data-way={way} style={{ flexGrow: share }} />
            ))}
          </div>
          <p className="small">
            {airShares(moment)
              .map(({ name: way, share }) => `${Math.round(100 * share)} % ${way}`)
              .join(' · ')}
          </p>
        </div>
      )}
      <BandsWord stove={stove} />
      <Spoken sentence={spokenAnswer(burn, name)} />
    </section>
  )
}
