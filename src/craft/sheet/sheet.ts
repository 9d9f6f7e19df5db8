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
  /** Pictures under all else, in colour. */
  readonly pictures?: readonly PlacedPicture[]
}

/** An SVG of this house on a page, as wide as it says and as high as its shape asks for [mm]. */
export interface PlacedPicture {
  readonly svg: string
  /** Upper left corner. */
  readonly at: Point
  readonly width: number
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
