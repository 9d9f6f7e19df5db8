import { useMemo, useState } from 'react'
import { BadInput, problemSentence } from '#basis/problem.ts'
import { compare } from '#proof/compare/compare.ts'
import type { CompareOptions, Comparison, MetricComparison } from '#proof/compare/model.ts'
import { inOrder } from '#proof/compare/naturalOrder.ts'
import { type Trial, variantOf } from '#proof/trial/model.ts'
import { Contrasts } from './contrasts.tsx'
import { DotPlot } from './dotPlot.tsx'

type Compared = { readonly comparison: Comparison } | { readonly sentence: string }

const compared = (trials: readonly Trial[], options: CompareOptions): Compared => {
  try {
    return { comparison: compare(trials, options) }
  } catch (fault) {
    if (fault instanceof BadInput) return { sentence: fault.problems.map(problemSentence).join(' ') }
    throw fault
  }
}

/** The first variant by name that was burnt twice: one burn alone is nothing to hold others against. */
const firstReference = (trials: readonly Trial[]): string | null => {
  const counts = new Map<string, number>()
  for (const trial of trials) counts.set(variantOf(trial), (counts.get(variantOf(trial)) ?? 0) + 1)
  return (
    [...counts]
      .filter(([, count]) => count > 1)
      .map(([variant]) => variant)
      .sort(inOrder)[0] ?? null
  )
}

const phaseWords = ({ metric }: MetricComparison): string =>
  metric.phase === null ? metric.name : `${metric.name} (${metric.phase})`

const Metric = ({
  comparison,
  reference,
}: {
  readonly comparison: MetricComparison
  readonly reference: string
}) => (
  <>
    <DotPlot comparison={comparison} />
    <Contrasts comparison={comparison} reference={reference} />
    {comparison.drift?.sentence != null && <p className="drift">{comparison.drift.sentence}</p>}
    <p className="small muted">
      {comparison.method.name}. {comparison.method.reason}
    </p>
    {comparison.notes.length > 0 && (
      <ul className="small muted trial-said">
        {comparison.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    )}
    {comparison.missing.length > 0 && (
      <ul className="small muted trial-said">
        {comparison.missing.map(({ index, trial, reason }) => (
          <li key={index}>
            “{trial}” is not among the points: {reason}.
          </li>
        ))}
      </ul>
    )}
  </>
)

/** Variants held against one another, metric by metric, so that luck is not taken for a gain. */
export const DidItHelp = ({ trials }: { readonly trials: readonly Trial[] }) => {
  const [reference, setReference] = useState<string | null>(null)
  const [question, setQuestion] = useState<string | null>(null)
  const [mishaps, setMishaps] = useState<'keep' | 'leave out'>('keep')
  const result = useMemo(() => {
    const against = reference ?? firstReference(trials)
    const options = {
      mishaps,
      ...(against === null ? {} : { reference: against }),
      ...(question === null ? {} : { question }),
    }
    return compared(trials, options)
  }, [trials, reference, question, mishaps])
  if ('sentence' in result)
    return (
      <>
        <p>{result.sentence}</p>
        {(reference !== null || question !== null) && (
          <button
            type="button"
            onClick={() => {
              setReference(null)
              setQuestion(null)
            }}
          >
            Ask anew
          </button>
        )}
      </>
    )
  const { comparison } = result
  const main = comparison.metrics.find(({ metric }) => metric.id === comparison.question)
  const others = comparison.metrics.filter((one) => one !== main)
  const anyMishap = trials.some(({ wentWrong = [] }) => wentWrong.length > 0)
  return (
    <div className="helped">
      <div className="helped-asked">
        <label>
          Held against
          <select value={comparison.reference} onChange={(event) => setReference(event.target.value)}>
            {comparison.variants.map(({ variant }) => (
              <option key={variant}>{variant}</option>
            ))}
          </select>
        </label>
        <label>
          Asked about
          <select value={comparison.question ?? ''} onChange={(event) => setQuestion(event.target.value)}>
            {comparison.metrics.map((one) => (
              <option key={one.metric.id} value={one.metric.id}>
                {phaseWords(one)}
              </option>
            ))}
          </select>
        </label>
        {anyMishap && (
          <label className="helped-check">
            <input
              type="checkbox"
              checked={mishaps === 'leave out'}
              onChange={(event) => setMishaps(event.target.checked ? 'leave out' : 'keep')}
            />
            leave out burns in which something went wrong
          </label>
        )}
      </div>
      <ul className="verdicts" aria-live="polite">
        {comparison.verdicts.map(({ variant, sentence, verdict }) => (
          <li key={variant} data-verdict={verdict}>
            {sentence}
          </li>
        ))}
      </ul>
      {comparison.warnings.length > 0 && (
        <ul className="helped-warnings">
          {comparison.warnings.map(({ code, sentence, fix }) => (
            <li key={`${code} ${sentence}`}>
              {sentence} <span className="muted">{fix}</span>
            </li>
          ))}
        </ul>
      )}
      {main !== undefined && (
        <section aria-label={phaseWords(main)}>
          <h3>{phaseWords(main)}</h3>
          <Metric comparison={main} reference={comparison.reference} />
        </section>
      )}
      {others.map((one) => (
        <details key={one.metric.id} className="helped-other">
          <summary>{phaseWords(one)}</summary>
          <Metric comparison={one} reference={comparison.reference} />
        </details>
      ))}
      {comparison.leftOut.length > 0 && (
        <ul className="small">
          {comparison.leftOut.map(({ index, trial, reason }) => (
            <li key={index}>
              “{trial}” was left out: {reason}
            </li>
          ))}
        </ul>
      )}
      <ul className="small muted trial-said">
        {comparison.provenance.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  )
}
