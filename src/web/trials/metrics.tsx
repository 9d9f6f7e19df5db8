import { amountText } from '#proof/compare/amount.ts'
import { trialCautions } from '#proof/metrics/cautions.ts'
import { metricsOf, type PhaseMetrics, PROVENANCE, type Worked } from '#proof/metrics/worked.ts'
import type { Trial } from '#proof/trial/model.ts'
import { Formula } from './formula.tsx'

const PHASE_NAMES: Readonly<Record<PhaseMetrics['phase'], string>> = {
  'high power': 'High power',
  simmer: 'Simmer',
}

/** A value and how far it may be off, in one unit: `7.20 min ± 0.05 min`. */
const valueText = (row: Pick<Worked, 'key' | 'unit' | 'value' | 'u'>): string =>
  amountText(row, row.value, row.u)

const doubtText = (row: Pick<Worked, 'key' | 'unit' | 'u'>): string =>
  row.u === 0 ? 'none told' : `± ${amountText(row, row.u, row.u)}`

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
      <span>=</span> {Number(row.value.toPrecision(6))} {row.unit === '1' ? '' : row.unit}
    </p>
    {row.contributions.length > 0 && (
      <>
        <p>
          Standard uncertainty {Number(row.u.toPrecision(2))} {row.unit === '1' ? '' : row.unit}; its square
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
          <strong>{valueText(row)}</strong> <span className="muted">{doubtText(row)}</span>
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
        {PROVENANCE} ± is one standard uncertainty, from instruments and readings alone: what two burns differ
        by is another matter.
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
