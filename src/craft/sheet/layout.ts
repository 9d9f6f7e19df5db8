import type { Drawing } from '../drawing.ts'
import { moved } from '../move.ts'
import { blocksOf } from './block.ts'
import { pageFurniture } from './furniture.ts'
import { type PackedPage, packPages } from './pack.ts'
import { type PaperName, pageFrame } from './paper.ts'
import type { Piece, Sheet } from './sheet.ts'

export interface SheetOptions {
  readonly paper: PaperName
  readonly stove: string
  readonly date: string
  readonly version: string
}

/** The drawings on a page by name; of one that goes on elsewhere, which pieces are here. */
const pageLabel = (page: PackedPage): string => {
  const here = page.placed.map(({ block }) => block)
  return [...new Set(here.map(({ title }) => title))]
    .map((title) => {
      const pieces = here.flatMap(({ piece, title: name }) =>
        name === title && piece !== null ? [piece] : [],
      )
      const [first] = pieces
      if (first === undefined) return `${title}: notes`
      const numbers = pieces.map(({ number }) => number).join(', ')
      return pieces.length === first.of ? title : `${title}, piece ${numbers} of ${first.of}`
    })
    .join('; ')
}

/**
 * Lays drawings on pages at true size [mm]. A drawing that fits neither way round is cut into pieces that
 * overlap; pieces and small drawings share pages. Pages come in the order of the drawings they begin with.
 */
export const laySheets = (drawings: readonly Drawing[], options: SheetOptions): readonly Sheet[] => {
  const { paper, stove, date, version } = options
  const cut = drawings.map((drawing) => blocksOf(drawing, paper))
  const pages = packPages(cut, paper)
  return pages.map((page, index): Sheet => {
    const frame = pageFrame(paper, page.way)
    const label = pageLabel(page)
    return {
      size: frame.size,
      label,
      pieces: page.placed.flatMap(({ block: { title, piece }, x, y }): readonly Piece[] =>
        piece === null
          ? []
          : [
              {
                title,
                clip: piece.cut.clip,
                at: { x: x + piece.at.x, y: y + piece.at.y },
                shapes: piece.cut.shapes,
              },
            ],
      ),
      furniture: [
        ...pageFurniture(frame, {
          label: `Sheet ${index + 1} of ${pages.length}: ${label}`,
          stove,
          date,
          version,
          page: index + 1,
          pages: pages.length,
        }),
        ...page.placed.flatMap(({ block: { words, wordsAt }, x, y }) =>
          words.shapes.map((shape) => moved(shape, x + wordsAt.x, y + wordsAt.y)),
        ),
      ],
    }
  })
}
