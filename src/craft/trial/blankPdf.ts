/** Pages of blanks, as they go to the printer. */
export interface BlankPdf {
  readonly pdf: Uint8Array
  readonly pages: number
  /** What the font cannot print. */
  readonly missingLetters: readonly string[]
}
