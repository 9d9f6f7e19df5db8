import { amountText } from '#proof/compare/amount.ts'
import { metricsOf, PROVENANCE, type Worked } from '#proof/metrics/worked.ts'
import type { Trial } from '#proof/trial/model.ts'
import { standing } from '../atStove/entry.ts'
import { Link } from '../routes/link.tsx'
import type { KnownTrial } from './allTrials.ts'
import { at } from './draft.ts'

const HEADLINES = ['timeToBoil', 'efficiencyNoChar', 'fuelBurnt'] as const

/** A list is glanced at: no finer than this, whatever the scale shows; a judgement [1]. */
const LIST_DOUBT = 0.01

const headline = (trial: Trial): readonly (Worked | undefined)[] => {
  const [first] = metricsOf(trial).phases
  return HEADLINES.map((key) => first?.rows.find((row) => row.key === key))
}

const Row = ({ known }: { readonly known: KnownTrial }) => {
  const { head, draft, log, soFar } = known
  const count = standing(log).length
  return (
    <tr>
      <th scope="row">
        <Link to={{ at: 'trial', trial: head.id }}>{head.name}</Link>
      </th>
      <td>{String(at(draft, ['stove', 'variant']) ?? at(draft, ['stove', 'name']) ?? '')}</td>
      <td>{String(draft.day ?? '')}</td>
      {soFar.trial === null ? (
        <td colSpan={HEADLINES.length} className="muted">
          {count === 0 ? 'not burnt yet' : `${count} noted`}; {soFar.missing.length + soFar.wrong.length}{' '}
          things still to say
        </td>
      ) : (
        headline(soFar.trial).map((row, i) => (
          <td key={HEADLINES[i]}>
            {row === undefined
              ? '–'
              : amountText(row, row.value, Math.max(row.u, LIST_DOUBT * Math.abs(row.value)))}
          </td>
        ))
      )}
      <td>
        <Link
          className="button"
          to={{ at: 'burn', trial: head.id }}
          aria-label={`At the stove: ${head.name}`}
        >
          At the stove
        </Link>
      </td>
    </tr>
  )
}

/** Burns, the latest first. */
export const TrialList = ({ trials }: { readonly trials: readonly KnownTrial[] }) => (
  <div className="trial-list">
    <table className="log-table">
      <thead>
        <tr>
          <th scope="col">Burn</th>
          <th scope="col">Variant</th>
          <th scope="col">Day</th>
          <th scope="col">Time to boil</th>
          <th scope="col">Efficiency, no char credit</th>
          <th scope="col">Fuel burnt</th>
          <th scope="col">
            <span className="unseen">At the stove</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {trials.toReversed().map((known) => (
          <Row key={known.head.id} known={known} />
        ))}
      </tbody>
    </table>
    <p className="small muted">{PROVENANCE}</p>
  </div>
)
