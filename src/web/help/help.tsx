import { useState } from 'react'
import { type QuantityKey, quantity } from '#basis/quantities.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { KeyList } from '../bench/keys/keyList.tsx'
import { startGuide } from '../firstRun/guideState.ts'
import type { Place } from '../routes/routes.ts'
import { QUANTITY_GROUPS } from './groups.ts'
import { Source } from './source.tsx'
import { WORDS } from './words.ts'
import './help.css'

const unitsOf = (key: QuantityKey): string => quantity(key).displayUnits.join(', ')

const matches = (needle: string, ...texts: readonly string[]): boolean => {
  const wanted = needle.trim().toLowerCase()
  return wanted === '' || texts.some((text) => text.toLowerCase().includes(wanted))
}

const QuantityRow = ({ row }: { readonly row: QuantityKey }) => {
  const { name, symbol, description } = quantity(row)
  const units = unitsOf(row)
  return (
    <div className="help-row" id={`quantity-${row}`}>
      <dt>
        {name}
        <span className="muted small">
          {' '}
          {symbol}
          {units === '' ? '' : `, ${units}`}
        </span>
      </dt>
      <dd>
        <p>{description}</p>
        <Source quantity={row} />
      </dd>
    </div>
  )
}

/** What every number is and where it comes from, the words of the trade, the keys. */
export const Help = (_: { readonly place: Extract<Place, { readonly at: 'help' }> }) => {
  const [needle, setNeedle] = useState('')
  const groups = QUANTITY_GROUPS.map(({ name, keys }) => ({
    name,
    keys: keys.filter((key) =>
      matches(needle, quantity(key).name, quantity(key).description, quantity(key).symbol),
    ),
  })).filter(({ keys }) => keys.length > 0)
  const words = WORDS.filter(({ word, means }) => matches(needle, word, means))
  const found = groups.reduce((sum, { keys }) => sum + keys.length, words.length)
  return (
    <div className="help">
      <header className="help-head">
        <h1>Help</h1>
        <label>
          Find a word or a number
          <input type="search" value={needle} onChange={(event) => setNeedle(event.target.value)} />
        </label>
        <button type="button" onClick={startGuide}>
          Show me round
        </button>
      </header>
      <p role="status" className="muted small help-found">
        {needle.trim() === '' ? '\u00a0' : found === 0 ? 'Nothing of that name.' : `${found} found`}
      </p>
      <div className="help-columns">
        <div>
          {groups.map(({ name, keys }) => (
            <section key={name}>
              <h2>{name}</h2>
              <dl>
                {keys.map((key) => (
                  <QuantityRow key={key} row={key} />
                ))}
              </dl>
            </section>
          ))}
        </div>
        <div>
          {words.length === 0 ? null : (
            <section>
              <h2>Words of the trade</h2>
              <dl>
                {words.map(({ word, means }) => (
                  <div className="help-row" key={word}>
                    <dt>{word}</dt>
                    <dd>{means}</dd>
                  </div>
                ))}
              </dl>
            </section>
          )}
          {needle.trim() === '' ? (
            <>
              <section>
                <h2>Keys</h2>
                <KeyList />
              </section>
              <section>
                <h2>Before you cut, build or burn</h2>
                <ul className="help-cautions">
                  {MAKING_CAUTIONS.map((caution) => (
                    <li key={caution}>{caution}</li>
                  ))}
                </ul>
              </section>
            </>
          ) : null}
        </div>
      </div>
    </div>
  )
}
