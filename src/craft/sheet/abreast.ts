import { moved } from '../move.ts'
import { type PaperName, pageSize } from './paper.ts'
import type { Sheet } from './sheet.ts'

/** The paper that words and blanks are set for: A3 takes two pages of A4 side by side, or its lines were too long to read. */
export const readingPaper = (paper: PaperName): PaperName => (paper === 'A3' ? 'A4' : paper)

const shifted = (
  { pieces, furniture, pictures }: Sheet,
  right: number,
): Pick<Sheet, 'pieces' | 'furniture' | 'pictures'> => ({
  pieces: pieces.map((piece) => ({ ...piece, at: { ...piece.at, x: piece.at.x + right } })),
  furniture: furniture.map((shape) => moved(shape, right, 0)),
  pictures: (pictures ?? []).map((picture) => ({
    ...picture,
    at: { ...picture.at, x: picture.at.x + right },
  })),
})

/** Sheets laid for `readingPaper` as pages of a paper: on A3 two abreast, in their order. */
export const abreast = (sheets: readonly Sheet[], paper: PaperName): readonly Sheet[] => {
  if (readingPaper(paper) === paper) return sheets
  const size = pageSize(paper, 'landscape')
  return Array.from({ length: Math.ceil(sheets.length / 2) }, (_, i): Sheet => {
    const pair = sheets.slice(2 * i, 2 * i + 2)
    const set = pair.map((sheet, k) => shifted(sheet, (k * size.width) / 2))
    return {
      size,
      label: [...new Set(pair.map(({ label }) => label))].join('; '),
      pieces: set.flatMap(({ pieces }) => pieces),
      furniture: set.flatMap(({ furniture }) => furniture),
      pictures: set.flatMap(({ pictures }) => pictures ?? []),
    }
  })
}
