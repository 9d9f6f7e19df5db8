import type { Box } from '../box.ts'
import type { Point, Shape } from '../drawing.ts'
import type { PaperSize } from './paper.ts'

/** A page as every writer prints it, its lower left corner at the origin [mm]. */
export interface Sheet {
  readonly size: PaperSize
  /** What the page holds: `Wrap of shell, sheet 1 of 2`. */
  readonly label: string
  readonly pieces: readonly Piece[]
  /** Everything that is not a drawing, in page coordinates. */
  readonly furniture: readonly Shape[]
}

/** A drawing, or the part of one that this page shows. */
export interface Piece {
  /** Title of the drawing. */
  readonly title: string
  /** What is shown of it, in the drawing's own coordinates. */
  readonly clip: Box
  /** Where the clip's lower left corner lies on the page. */
  readonly at: Point
  /** In the drawing's own coordinates; reaches beyond the clip. */
  readonly shapes: readonly Shape[]
}
