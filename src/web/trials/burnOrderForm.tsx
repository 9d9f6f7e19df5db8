import { type FormEvent, useState } from 'react'
import { BadInput, problemSentence } from '#basis/problem.ts'
import { type OfferedOrder, offeredOrder } from '#proof/compare/offeredOrder.ts'
import { Wide } from './wide.tsx'

const drawn = (): number => crypto.getRandomValues(new Uint32Array(1))[0] ?? 0

/** An order to burn in, drawn by lot before the first burn of a series. */
export const BurnOrderForm = ({ variants }: { readonly variants: readonly string[] }) => {
  const [names, setNames] = useState(variants.join('\n'))
  const [rounds, setRounds] = useState('5')
  const [result, setResult] = useState<OfferedOrder | string | null>(null)
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    try {
      const wanted = names
        .split('\n')
        .map((name) => name.trim())
        .filter((name) => name !== '')
      setResult(offeredOrder(wanted, Number(rounds), drawn()))
    } catch (fault) {
      if (!(fault instanceof BadInput)) throw fault
      setResult(fault.problems.map(problemSentence).join(' '))
    }
  }
  return (
    <form onSubmit={submit} className="order-form">
      <label>
        Variants to burn, one a line
        <textarea rows={4} value={names} onChange={(event) => setNames(event.target.value)} />
      </label>
      <label>
        Rounds
        <input inputMode="numeric" value={rounds} onChange={(event) => setRounds(event.target.value)} />
      </label>
      <button type="submit">Draw an order by lot</button>
      <div role="status">
        {typeof result === 'string' && <p data-fault="true">{result}</p>}
        {result !== null && typeof result !== 'string' && (
          <>
            <Wide label="Order to burn in">
              <table className="order-table">
                <thead>
                  <tr>
                    <th scope="col">Round</th>
                    {result.variants.map((variant, place) => (
                      <th key={variant} scope="col">
                        {place + 1}.
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {Array.from({ length: result.rounds }, (_, round) => round + 1).map((round) => (
                    <tr key={round}>
                      <th scope="row">{round}</th>
                      {result.burns
                        .filter((burn) => burn.round === round)
                        .map(({ place, variant }) => (
                          <td key={place}>
                            <span className="muted small">{place}</span> {variant}
                          </td>
                        ))}
                    </tr>
                  ))}
                </tbody>
              </table>
            </Wide>
            <ul className="trial-said">
              {result.advice.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
            <p className="small muted">
              Drawn with the number {result.seed}; the same number draws the same order. Note the small figure
              as the place of the burn.
            </p>
          </>
        )}
      </div>
    </form>
  )
}
