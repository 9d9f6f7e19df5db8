import type { PngPainter } from '#craft/card/png.ts'
import type { LetteringFonts } from '#craft/pdf/face.ts'
import type { PaperName } from '#craft/sheet/paper.ts'
import type { SolidKernel } from '#craft/solid/kernel.ts'
import type { StoveDocument } from '#stove/document/read.ts'
import type { Shelf } from '#stove/model.ts'
import type { CardFormat } from './cards.ts'
import type { SolidFormat } from './solidFiles.ts'

/** What every file of a plan is made from. */
export interface MakingWish {
  readonly document: StoveDocument
  readonly shelf: Shelf | null
  /** Day the pages bear, `2031-05-17`. */
  readonly date: string
  readonly author: string | null
  readonly licence: string | null
  /** Of templates; a plan and sheets to fill in, which are read and not cut, go on Letter or A4. */
  readonly paper: PaperName
  readonly solidFormat: SolidFormat
  readonly cardFormat: CardFormat
  readonly cardTheme: 'light' | 'dark'
  /** Sets of coefficients that the bands are drawn from. */
  readonly bandSets: number
}

/** What comes from outside: letters, machines, and who is to be told. */
export interface MakingTools {
  readonly fonts: LetteringFonts
  /** What runs in the page for a screen. */
  readonly script: string
  /** Of the program. */
  readonly version: string
  readonly kernel: () => Promise<SolidKernel>
  readonly painter: () => Promise<PngPainter>
  /** What is being done, and how far it is: 0 to 1, or null where nobody knows. */
  readonly tell: (doing: string, share: number | null) => void
}

/** The paper of what is read rather than cut. */
export const readingPaper = (paper: PaperName): 'A4' | 'Letter' => (paper === 'Letter' ? 'Letter' : 'A4')
