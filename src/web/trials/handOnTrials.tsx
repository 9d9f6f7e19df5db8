import { metricsCsv } from '#proof/metrics/metricsCsv.ts'
import { trialsJson } from '#proof/trial/exchange/bundle.ts'
import { trialsCsv } from '#proof/trial/exchange/records.ts'
import { type KnownTrial, wholeTrials } from './allTrials.ts'
import { wholeFile } from './draft.ts'
import { fileName, handOver } from './handOver.ts'

/** The burns that are shown, as files: whole, as a table, or what they came to. */
export const HandOnTrials = ({
  name,
  trials,
  loading,
}: {
  readonly name: string
  readonly trials: readonly KnownTrial[]
  /** Some are still being fetched: a file saved now would lack them. */
  readonly loading: boolean
}) => {
  const files = () => trials.map(({ draft, log }) => wholeFile(draft, log))
  const whole = wholeTrials(trials)
  return (
    <p className="trial-actions">
      <button
        type="button"
        disabled={loading || trials.length === 0}
        onClick={() => handOver(fileName(name, '.trials.json'), trialsJson(files()), 'application/json')}
      >
        Save these as one file
      </button>
      <button
        type="button"
        disabled={loading || trials.length === 0}
        onClick={() => handOver(fileName(name, '.trials.csv'), trialsCsv(files()), 'text/csv')}
      >
        As a table (CSV)
      </button>
      {whole.length > 0 && (
        <button
          type="button"
          disabled={loading}
          onClick={() => handOver(fileName(name, '.results.csv'), metricsCsv(whole), 'text/csv')}
        >
          What they came to (CSV)
        </button>
      )}
    </p>
  )
}
