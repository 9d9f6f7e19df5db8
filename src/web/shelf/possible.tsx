import { useMemo, useState } from 'react'
import type { Bit } from '#stove/model.ts'
import type { ShelfCan } from '#stove/start/choice.ts'
import { useCell } from '../cell/useCell.ts'
import { ScopedSvg } from '../plan/scopedSvg.tsx'
import { useMaking } from '../plan/useMaking.ts'
import { theme, units } from '../settings/settings.ts'
import { burnSentence } from '../startStove/burnSentence.ts'
import { startWith } from '../startStove/wish.ts'
import type { PossibleStarts } from '../startStove/work.ts'

const FIRST = 8

/** What could be made from the cans of the shelf: pairs that make a stove, the best first. */
export const PossibleStoves = ({
  cans,
  bits,
}: {
  readonly cans: readonly ShelfCan[]
  readonly bits: readonly Bit[]
}) => {
  const dark = useCell(theme) === 'dark'
  const inUnits = useCell(units)
  const { state, run, cancel } = useMaking()
  const [found, setFound] = useState<{ readonly of: object; readonly starts: PossibleStarts } | null>(null)
  const [all, setAll] = useState(false)
  // The answer is of the very cans and bits that were asked about.
  const key = useMemo(() => ({ cans, bits }), [cans, bits])
  const look = async (): Promise<void> => {
    const outcome = await run('What could be made', 'starts', { ...key, fuel: 'wood-chips' })
    if (outcome.kind === 'done') setFound({ of: key, starts: outcome.done })
  }
  const starts = found?.starts ?? null
  const shown = starts === null ? [] : all ? starts.stoves : starts.stoves.slice(0, FIRST)
  return (
    <section className="possible" aria-labelledby="possible-title">
      <h2 id="possible-title">What could I make from these?</h2>
      {cans.length < 2 ? (
        <p className="muted">It takes two cans.</p>
      ) : (
        <div className="shelf-buttons">
          <button type="button" disabled={state.kind === 'making'} onClick={() => void look()}>
            {starts === null ? 'Try every pair' : 'Try every pair again'}
          </button>
          {state.kind === 'making' ? (
            <>
              <progress aria-label="Pairs tried" {...(state.share === null ? {} : { value: state.share })} />
              <span className="muted">{state.doing}</span>
              <button type="button" onClick={cancel}>
                Cancel
              </button>
            </>
          ) : null}
        </div>
      )}
      <div aria-live="polite">
        {state.kind === 'failed' ? <p className="can-wrong">{state.sentence}</p> : null}
        {starts === null ? null : (
          <p>
            {starts.stoves.length === 0
              ? 'No two of these cans make a stove that holds.'
              : `${starts.stoves.length} of ${starts.tried} pairs that go into each other make a stove that holds.`}
            {starts.tried < starts.pairs ? ` The other ${starts.pairs - starts.tried} were not tried.` : ''}
            {found !== null && found.of !== key ? ' The shelf has changed since.' : ''}
          </p>
        )}
      </div>
      <ol className="possible-stoves">
        {shown.map(({ outer, inner, burn, warnings, pictures }) => (
          <li key={`${outer} ${inner}`}>
            <button type="button" className="possible-stove" onClick={() => startWith({ outer, inner })}>
              <ScopedSvg svg={dark ? pictures.dark : pictures.light} className="possible-picture" />
              <span>
                <strong>
                  {inner} in {outer}
                </strong>
                <span data-clean={burn.clean}>{burnSentence(burn, inUnits)}</span>
                {warnings === 0 ? null : (
                  <span className="muted">
                    {warnings} {warnings === 1 ? 'warning' : 'warnings'}
                  </span>
                )}
              </span>
            </button>
          </li>
        ))}
      </ol>
      {starts !== null && !all && starts.stoves.length > FIRST ? (
        <button type="button" onClick={() => setAll(true)}>
          Show the other {starts.stoves.length - FIRST}
        </button>
      ) : null}
      {shown.length === 0 ? null : (
        <p className="muted small">
          With softwood chips, without pot stand and damper. Predictions, no measurements; choose one to start
          it.
        </p>
      )}
    </section>
  )
}
