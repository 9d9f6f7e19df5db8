import type { Canvas } from '../paint.ts'

/** A stretch of a page that is not cut: a line, a table's row, a picture. Points. */
export interface Strip {
  readonly height: number
  /** White over it, left out at the top of a page. */
  readonly before: number
  /** Stays on the page of what follows. */
  readonly keep: boolean
  /** `x` left edge, `y` top. */
  readonly draw: (canvas: Canvas, x: number, y: number) => void
  /** Drawn again at the top of the page where what it heads goes on. */
  readonly head?: Strip
  /** The same but lower by so many points, where it holds a picture that may give way so far; else null. */
  readonly lower?: (by: number) => Strip | null
}
