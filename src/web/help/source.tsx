import type { QuantityKey } from '#basis/quantities.ts'
import bib from '../../../docs/references.bib?raw'
import { ORIGINS } from './origins.ts'
import { readReferences } from './references.ts'

const REFERENCES = readReferences(bib)

/** Where the numbers of a quantity come from. */
export const Source = ({ quantity }: { readonly quantity: QuantityKey }) => {
  const { from, sources } = ORIGINS[quantity]
  return (
    <div className="source">
      <p>{from}</p>
      {sources.length === 0 ? null : (
        <ul className="small muted">
          {sources.map((key) => (
            <li key={key}>{REFERENCES.get(key)?.text ?? key}</li>
          ))}
        </ul>
      )}
    </div>
  )
}
