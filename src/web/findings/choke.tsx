import { draughtShares } from '#craft/section/answers.ts'
import { useCell } from '../cell/useCell.ts'
import type { LiveStove } from '../stove/liveBurn.ts'
import './findings.css'

/** Where the draught is spent, most first: widen there what should let more through. */
export const Choke = ({ stove }: { readonly stove: LiveStove }) => {
  const live = useCell(stove.live)
  const shares = live?.moment == null ? [] : draughtShares(live.moment.passages)
  const most = Math.max(0.01, ...shares.map(({ share }) => share))
  return (
    <section className="choke" aria-label="What chokes the air">
      <h2>What chokes the air</h2>
      <p className="muted small">Share of the draught’s work that is spent there.</p>
      {shares.length === 0 ? (
        <p className="muted">Nothing flows.</p>
      ) : (
        <ol>
          {shares.map(({ name, share }) => (
            <li key={name}>
              <span>{name}</span>
              <span className="choke-share">{Math.round(100 * share)} %</span>
              <svg viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
                <path className="choke-rail" d="M0 3H100" />
                <path className="choke-bar" d={`M0 3H${(100 * share) / most}`} />
              </svg>
            </li>
          ))}
        </ol>
      )}
    </section>
  )
}
