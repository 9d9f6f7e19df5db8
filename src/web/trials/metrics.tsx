import { trialCautions } from '#proof/metrics/cautions.ts'
import { DOUBT_SENTENCE, valueAndDoubt } from '#proof/metrics/doubt.ts'
import { metricsOf, type PhaseMetrics, PROVENANCE, type Worked } from '#proof/metrics/worked.ts'
import type { Trial } from '#proof/trial/model.ts'
import { Formula } from './formula.tsx'

const PHASE_NAMES: Readonly<Record<PhaseMetrics['phase'], string>> = {
  'high power': 'High power',
  simmer: 'Simmer',
}

/** A number and its unit as the protocol has them; a share has none. */
const inProtocol = (value: number, figures: number, unit: Worked['unit']): string =>
  `${Number(value.toPrecision(figures))}${unit === '1' ? '' : ` ${unit}`}`

/** A value and how far it may be off, in one unit: `7.20 min ± 0.05 min`. */
const ValueText = ({ row }: { readonly row: Worked }) => {
  const [value, doubt] = valueAndDoubt(row)
  return (
    <>
      <strong>{value}</strong> <span className="muted">{doubt ?? 'uncertainty not told'}</span>
    </>
  )
}

const WorkedOut = ({ row }: { readonly row: Worked }) => (
  <details className="worked">
    <summary>
      How this was worked out<span className="unseen">: {row.name}</span>
    </summary>
    <p className="worked-formula">
      <Formula text={`${row.symbol} = ${row.formula}`} />
    </p>
    <p className="worked-formula">
      <span>=</span> {row.numbers}
    </p>
    <p className="worked-formula">
      <span>=</span> {inProtocol(row.value, 6, row.unit)}
    </p>
    {row.contributions.length > 0 && (
      <>
        <p>
          Standard uncertainty {inProtocol(row.u, 2, row.unit)}, half of what stands behind ±; its square
          comes from:
        </p>
        <ul className="worked-shares">
          {row.contributions
            .filter(({ share }) => share >= 0.005)
            .map(({ name, share }) => (
              <li key={name}>
                {Math.round(100 * share)} % {name}
              </li>
            ))}
        </ul>
      </>
    )}
    {row.note !== null && <p>{row.note}</p>}
  </details>
)

const Rows = ({ rows }: { readonly rows: readonly Worked[] }) => (
  <dl className="metric-list">
    {rows.map((row) => (
      <div key={row.key} data-metric={row.metric}>
        <dt>
          {row.name}{' '}
          <span className="muted">
            <Formula text={row.symbol} />
          </span>
        </dt>
        <dd>
          <ValueText row={row} />
          <WorkedOut row={row} />
        </dd>
      </div>
    ))}
  </dl>
)

/** Every metric with its uncertainty and its way there. */
export const Metrics = ({ trial }: { readonly trial: Trial }) => {
  const metrics = metricsOf(trial)
  const cautions = trialCautions(trial, metrics)
  return (
    <section aria-labelledby="trial-metrics" className="trial-metrics">
      <h2 id="trial-metrics">What it came to</h2>
      <p className="small">
        {PROVENANCE} {DOUBT_SENTENCE} It comes from instruments and readings alone: what two burns differ by
        is another matter.
      </p>
      {cautions.length > 0 && (
        <ul className="trial-cautions">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      {metrics.phases.map((phase, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a phase is known by its place alone
        <section key={i} aria-label={`${PHASE_NAMES[phase.phase]}, worked out`}>
          <h3>{PHASE_NAMES[phase.phase]}</h3>
          <Rows rows={phase.rows.filter(({ metric }) => metric)} />
          <details>
            <summary>Steps on the way, and the same in the symbols of ISO 19867-1</summary>
            <Rows rows={phase.rows.filter(({ metric }) => !metric)} />
          </details>
          {phase.missing.length > 0 && (
            <ul className="small muted">
              {phase.missing.map(({ key, name, reason }) => (
                <li key={key}>
                  No {name}: {reason}.
                </li>
              ))}
            </ul>
          )}
        </section>
      ))}
      {metrics.turndown !== null && (
        <section aria-label="Both phases">
          <h3>Both phases</h3>
          <Rows rows={[metrics.turndown]} />
        </section>
      )}
    </section>
  )
}
