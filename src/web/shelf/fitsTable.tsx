import { type KeyboardEvent, useMemo, useRef, useState } from 'react'
import type { FitKind } from '#stove/fit/fitKind.ts'
import type { Can } from '#stove/model.ts'
import { FIT_SIGNS, fitSquares } from './fits.ts'

/** All cans against all; one square is looked at, and what its fit means stands under the table. */
export const FitsTable = ({ cans }: { readonly cans: ReadonlyMap<string, Can> }) => {
  const squares = useMemo(() => fitSquares(cans), [cans])
  const names = [...cans.keys()]
  const [at, setAt] = useState<readonly [row: number, column: number]>([0, 1])
  const table = useRef<HTMLTableElement>(null)
  const chosen = squares[at[0]]?.[at[1]] ?? null

  const move = (event: KeyboardEvent): void => {
    const by = { ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] }[event.key]
    if (by === undefined) return
    event.preventDefault()
    let [row, column] = [at[0] + (by[0] ?? 0), at[1] + (by[1] ?? 0)]
    // A can with itself is no square.
    if (row === column) [row, column] = [row + (by[0] ?? 0), column + (by[1] ?? 0)]
    if (squares[row]?.[column] === undefined) return
    setAt([row, column])
    table.current?.querySelector<HTMLButtonElement>(`[data-at="${row}-${column}"]`)?.focus()
  }
  return (
    <div className="fits">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="fits-scroll" aria-label="How the cans fit, a table" tabIndex={0}>
        <table ref={table} onKeyDown={move}>
          <caption className="unseen">Rows go into columns. Arrow keys move from square to square.</caption>
          <thead>
            <tr>
              <th scope="col" className="fits-corner">
                this one ↓ into →
              </th>
              {names.map((name) => (
                <th key={name} scope="col">
                  <span>{name}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {squares.map((row, r) => (
              <tr key={names[r]}>
                <th scope="row">{names[r]}</th>
                {row.map((square, c) => (
                  <td key={names[c]}>
                    {square === null ? (
                      <span className="unseen">itself</span>
                    ) : (
                      <button
                        type="button"
                        data-at={`${r}-${c}`}
                        data-fit={square.fit.kind.replaceAll(' ', '-')}
                        data-sure={square.fit.certain}
                        tabIndex={at[0] === r && at[1] === c ? 0 : -1}
                        aria-pressed={at[0] === r && at[1] === c}
                        aria-label={`${square.inner} into ${square.outer}: ${FIT_SIGNS[square.fit.kind].word}${square.fit.certain ? '' : ', not certain'}`}
                        onFocus={() => setAt([r, c])}
                        onPointerEnter={() => setAt([r, c])}
                        onClick={() => setAt([r, c])}
                      >
                        {FIT_SIGNS[square.fit.kind].sign}
                        {square.fit.certain ? '' : '?'}
                      </button>
                    )}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="fits-said" aria-live="polite">
        {chosen?.sentence ?? ''}
      </p>
      <ul className="fits-key small">
        {(Object.entries(FIT_SIGNS) as [FitKind, (typeof FIT_SIGNS)[FitKind]][]).map(
          ([kind, { sign, word }]) => (
            <li key={kind}>
              <span aria-hidden="true" data-fit={kind.replaceAll(' ', '-')}>
                {sign}
              </span>{' '}
              {word}
            </li>
          ),
        )}
        <li>
          <span aria-hidden="true">?</span> as measured it may be otherwise
        </li>
      </ul>
    </div>
  )
}
