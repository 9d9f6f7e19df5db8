/** Symbols as the protocol writes them: `_cm` hangs below, `^T` stands above. */
const PIECE = /([_^])([A-Za-z0-9,]+)/g

export interface Piece {
  readonly at: number
  readonly kind: 'plain' | '_' | '^'
  readonly text: string
}

export const piecesOf = (text: string): readonly Piece[] => {
  const pieces: Piece[] = []
  let from = 0
  for (const found of text.matchAll(PIECE)) {
    if (found.index > from) pieces.push({ at: from, kind: 'plain', text: text.slice(from, found.index) })
    pieces.push({ at: found.index, kind: found[1] as '_' | '^', text: found[2] ?? '' })
    from = found.index + found[0].length
  }
  if (from < text.length) pieces.push({ at: from, kind: 'plain', text: text.slice(from) })
  return pieces
}
