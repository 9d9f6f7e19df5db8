import '../compare.css'
import './predicted.css'
import { useEffect, useState } from 'react'
import { PROVENANCE } from '#proof/metrics/worked.ts'
import type { PredictedTrial } from '#proof/predicted/model.ts'
import type { Trial } from '#proof/trial/model.ts'
import { workshop } from '../../workshop/workshop.ts'
import { Wide } from '../wide.tsx'
import { askPrediction } from './askPrediction.ts'
import { FigureRow } from './figureRow.tsx'

type State =
  | { readonly kind: 'working'; readonly done: number }
  | { readonly kind: 'sentence'; readonly sentence: string }
  | { readonly kind: 'there'; readonly predicted: PredictedTrial }

/** A trial beside its predicted burn: the same stove lit as it was lit, with bands. */
export const PredictedBurn = ({
  trial,
  revision,
}: {
  readonly trial: Trial
  /** Of the stove that was burnt. */
  readonly revision: string
}) => {
  const [state, setState] = useState<State>({ kind: 'working', done: 0 })
  useEffect(() => {
    const stop = new AbortController()
    setState({ kind: 'working', done: 0 })
    const work = async (): Promise<State> => {
      const stove = await workshop.revision(revision)
      if (!stove.ok) return { kind: 'sentence', sentence: stove.refusal.sentence }
      const answer = await askPrediction(trial, stove.value.text, stop.signal, (done) =>
        setState({ kind: 'working', done }),
      )
      if (!answer.ok) return { kind: 'sentence', sentence: answer.sentence }
      return answer.value === null
        ? {
            kind: 'sentence',
            sentence: 'Only a high-power phase can be held against a prediction; this trial has none.',
          }
        : { kind: 'there', predicted: answer.value }
    }
    work().then(
      (next) => {
        if (!stop.signal.aborted) setState(next)
      },
      () => undefined,
    )
    return () => stop.abort()
  }, [trial, revision])
  if (state.kind === 'working')
    return (
      <p role="status">
        Burning it on paper … <progress value={state.done} max={1} aria-label="sets of coefficients burnt" />
      </p>
    )
  if (state.kind === 'sentence') return <p>{state.sentence}</p>
  const { figures, cautions, noBurn, burns } = state.predicted
  return (
    <>
      {noBurn !== null && <p data-fault="true">The model has this stove not burn: {noBurn}</p>}
      <Wide label="Predicted beside measured">
        <table className="predicted-table">
          <thead>
            <tr>
              <th scope="col">High power</th>
              <th scope="col">Predicted, 5th to 95th of 100</th>
              <th scope="col">Measured</th>
              <th scope="col">Lies</th>
              <th scope="col">
                <span className="unseen">Picture</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {figures.map((figure) => (
              <FigureRow key={figure.claim.key} figure={figure} />
            ))}
          </tbody>
        </table>
      </Wide>
      <p className="small muted">
        Shaded: the band of the prediction; upright line: its likeliest value; diamond: measured, with one
        standard uncertainty either way.
        {burns !== null &&
          burns < 1 &&
          ` ${Math.round(100 * (1 - burns))} % of the sets of coefficients do not burn at all.`}
      </p>
      {cautions.length > 0 && (
        <ul className="small trial-said">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      <p className="small muted">{PROVENANCE}</p>
    </>
  )
}
