import { piecesOf } from './symbolPieces.ts'

/** A symbol or a formula with its letters hung and lifted. */
export const Formula = ({ text }: { readonly text: string }) => (
  <span className="formula">
    {piecesOf(text).map(({ at, kind, text: piece }) =>
      kind === 'plain' ? piece : kind === '_' ? <sub key={at}>{piece}</sub> : <sup key={at}>{piece}</sup>,
    )}
  </span>
)
