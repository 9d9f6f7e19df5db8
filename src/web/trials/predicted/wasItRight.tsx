import './predicted.css'
import { useEffect, useRef, useState } from 'react'
import type { ClaimResiduals, PredictedTrial } from '#proof/predicted/model.ts'
import { claimResiduals, RESIDUAL_PROVENANCE } from '#proof/predicted/residuals.ts'
import { workshop } from '../../workshop/workshop.ts'
import type { KnownTrial } from '../allTrials.ts'
import { plotScale } from '../plotScale.ts'
import { askPrediction } from './askPrediction.ts'

const WIDTH = 420
const HEIGHT = 48
const PAD = 12

const VERDICTS: Readonly<Record<ClaimResiduals['verdict'], string>> = {
  wrong: 'gets it wrong',
  'too sure': 'is too sure',
  leans: 'leans',
  holds: 'holds',
  few: 'too few burns',
}

/** Measured over predicted, a mark a burn; 100 % is a prediction that was right. */
const Ratios = ({ claim, residuals }: ClaimResiduals) => {
  const percent = residuals.map(({ ratio }) => 100 * ratio)
  const { x, ticks } = plotScale([...percent, 100], PAD, WIDTH - PAD, { most: 5 })
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${claim.name}: measured over predicted`}
      className="contrast-line"
    >
      <line x1={x(100)} x2={x(100)} y1={0} y2={30} className="plot-zero" />
      {ticks.map((tick) => (
        <text key={tick} x={x(tick)} y={HEIGHT - 4} textAnchor="middle" className="plot-figure">
          {tick} %
        </text>
      ))}
      {residuals.map(({ index, ratio, side, trial }) => (
        <path
          key={index}
          d={`M${x(100 * ratio)} 8l6 7-6 7-6-7z`}
          className={side === 'within' || side === null ? 'dot dot-hollow' : 'dot'}
        >
          <title>{`${trial}: ${Math.round(100 * ratio)} % of what was predicted${side === null || side === 'within' ? '' : `, ${side} its band`}`}</title>
        </path>
      ))}
    </svg>
  )
}

type Work =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly done: number; readonly of: number }
  | {
      readonly kind: 'there'
      readonly claims: readonly ClaimResiduals[]
      readonly skipped: readonly string[]
    }

/** Every burn against its own prediction: what the model gets wrong for this maker. Asked for, since it takes a while. */
export const WasItRight = ({ trials }: { readonly trials: readonly KnownTrial[] }) => {
  const [work, setWork] = useState<Work>({ kind: 'idle' })
  const stop = useRef<AbortController | null>(null)
  useEffect(() => () => stop.current?.abort(), [])
  const whole = trials.filter(({ soFar }) => soFar.trial !== null)
  const run = async (signal: AbortSignal): Promise<void> => {
    const predicted: PredictedTrial[] = []
    const skipped: string[] = []
    for (const [i, { head, soFar }] of whole.entries()) {
      setWork({ kind: 'working', done: i, of: whole.length })
      const { trial } = soFar
      if (trial === null || head.aboutRevision === null) continue
      const stove = await workshop.revision(head.aboutRevision)
      signal.throwIfAborted()
      if (!stove.ok) {
        skipped.push(`${head.name}: ${stove.refusal.sentence}`)
        continue
      }
      const answer = await askPrediction(trial, stove.value.text, signal)
      if (!answer.ok) skipped.push(`${head.name}: ${answer.sentence}`)
      else if (answer.value === null) skipped.push(`${head.name} has no high-power phase.`)
      else predicted.push(answer.value)
    }
    setWork({ kind: 'there', claims: claimResiduals(predicted), skipped })
  }
  const begin = (): void => {
    stop.current?.abort()
    const now = new AbortController()
    stop.current = now
    run(now.signal).catch(() => setWork({ kind: 'idle' }))
  }
  if (work.kind === 'idle') {
    if (whole.length === 0)
      return <p className="muted">No burn is whole enough yet to be held against its prediction.</p>
    return (
      <button type="button" onClick={begin}>
        {whole.length === 1
          ? 'Hold the one burn against its prediction'
          : `Hold all ${whole.length} burns against their predictions`}
      </button>
    )
  }
  if (work.kind === 'working')
    return (
      <p role="status">
        Burning {work.done + 1} of {work.of} on paper …{' '}
        <progress value={work.done} max={work.of} aria-label="burns worked out" />{' '}
        <button type="button" onClick={() => stop.current?.abort()}>
          Stop
        </button>
      </p>
    )
  const told = work.claims.filter(({ residuals }) => residuals.length > 0)
  return (
    <div className="helped">
      <ul className="contrasts">
        {told.map((claim) => (
          <li key={claim.claim.key}>
            <p>
              <strong className="verdict" data-verdict={claim.verdict}>
                {VERDICTS[claim.verdict]}
              </strong>{' '}
              {claim.sentence}
            </p>
            <Ratios {...claim} />
          </li>
        ))}
      </ul>
      <p className="small muted">
        Filled: outside the band of its prediction; hollow: within it, or without a band.
      </p>
      <ul className="small muted trial-said">
        {[...RESIDUAL_PROVENANCE, ...work.skipped].map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p>
        <button type="button" onClick={begin}>
          Work it out again
        </button>
      </p>
    </div>
  )
}
