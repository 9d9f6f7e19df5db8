import type { Outlines } from '../lettering/outline.ts'
import type { PixelBox } from '../section/sheet.ts'
import type { Block } from './block.ts'
import type { CardFormat } from './format.ts'
import type { Head } from './head.ts'
import { type Column, columnHeight, columnWidth, dealt } from './setting.ts'

/** What one card has room for: where its picture stands, and the columns of blocks from `top` down. */
export interface Page {
  readonly picture: PixelBox
  readonly top: number
  readonly columns: readonly Column[]
}

/** Steps in which a text grows shorter in the search for the least height it needs [px]. */
const STEP = 8

/** Columns no higher than they must be for the same number of cards: they come out about equally long. */
const balanced = (
  outlines: Outlines,
  blocks: readonly Block[],
  format: CardFormat,
  height: number,
): readonly Column[] => {
  const width = columnWidth(format)
  const { count } = format.columns
  const cards = (columns: readonly Column[]): number => Math.ceil(columns.length / count)
  let best = dealt(outlines, blocks, format, { width, height })
  if (count === 1) return best
  const most = cards(best)
  const tallest = Math.max(...best.flat().map(({ set }) => set.height))
  for (let less = height - STEP; less >= tallest; less -= STEP) {
    const columns = dealt(outlines, blocks, format, { width, height: less })
    if (cards(columns) > most) break
    best = columns
  }
  return best
}

/** Blocks on as many cards as they need. On a square card the picture takes the room that they leave. */
export const spreadOut = (
  outlines: Outlines,
  blocks: readonly Block[],
  head: Head,
  format: CardFormat,
): readonly Page[] => {
  const { shape, picture, text, em } = format
  const gap = 0.5 * em.line
  const top = shape === 'wide' ? head.bottom + 0.3 * em.line : Math.max(picture.bottom, head.bottom) + gap
  const columns = balanced(outlines, blocks, format, text.bottom - top)
  const { count } = format.columns
  const pages = Array.from({ length: Math.ceil(columns.length / count) }, (_, i) =>
    columns.slice(i * count, (i + 1) * count),
  )
  if (shape === 'wide') return pages.map((page) => ({ picture, top, columns: page }))
  // The same on every card of a part, so that its pictures are of one size.
  const needed = Math.max(...columns.map((column) => columnHeight(format, column)))
  const lower = Math.max(top, text.bottom - needed)
  const box = { ...picture, top: Math.max(picture.top, head.bottom), bottom: lower - gap }
  return pages.map((page) => ({ picture: box, top: lower, columns: page }))
}
