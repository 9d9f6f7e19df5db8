import type { Box } from '../box.ts'

export const PAPER_NAMES = ['A4', 'Letter', 'A3'] as const
export type PaperName = (typeof PAPER_NAMES)[number]
export type Orientation = 'portrait' | 'landscape'

export interface PaperSize {
  /** [mm] */
  readonly width: number
  readonly height: number
}

/** Upright. A4 and A3 by ISO 216; Letter is 8.5 in by 11 in (ANSI/ASME Y14.1); all from memory. [mm] */
const PAPERS: Readonly<Record<PaperName, PaperSize>> = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
  A3: { width: 297, height: 420 },
}

/** A paper, one way or the other [mm]. */
export const pageSize = (paper: PaperName, orientation: Orientation): PaperSize => {
  const { width, height } = PAPERS[paper]
  return orientation === 'portrait' ? { width, height } : { width: height, height: width }
}

/**
 * Bare edge of every page [mm]. Most desk printers cannot ink the last 3 to 6 mm and some need more at the
 * foot, and with scaling off what lies there is lost; 10 mm is safe on nearly all. Common practice, no source.
 */
export const MARGIN = 10

/** Strip on the left that holds the upright check bar [mm]. */
const BAR_COLUMN = 9
/** Head: what the page holds. Foot: check bar, cautions, whose page it is. [mm] */
const HEAD = 8
const FOOT_PORTRAIT = 40
const FOOT_LANDSCAPE = 28

export interface PageFrame {
  readonly size: PaperSize
  /** Where drawings go. */
  readonly field: Box
  readonly head: Box
  readonly foot: Box
  readonly barColumn: Box
}

/** How a page is divided. */
export const pageFrame = (paper: PaperName, orientation: Orientation): PageFrame => {
  const size = pageSize(paper, orientation)
  const right = size.width - MARGIN
  const top = size.height - MARGIN
  const footTop = MARGIN + (orientation === 'portrait' ? FOOT_PORTRAIT : FOOT_LANDSCAPE)
  const fieldLeft = MARGIN + BAR_COLUMN
  return {
    size,
    head: { left: MARGIN, right, bottom: top - HEAD, top },
    foot: { left: MARGIN, right, bottom: MARGIN, top: footTop },
    barColumn: { left: MARGIN, right: fieldLeft, bottom: footTop, top: top - HEAD },
    field: { left: fieldLeft, right, bottom: footTop, top: top - HEAD },
  }
}

/** How much room drawings have on a page [mm]. */
export const fieldSize = (paper: PaperName, orientation: Orientation): PaperSize => {
  const { field } = pageFrame(paper, orientation)
  return { width: field.right - field.left, height: field.top - field.bottom }
}
