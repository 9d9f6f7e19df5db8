import type { Stove } from '#stove/model.ts'
import type { LetteringFonts } from '../pdf/face.ts'
import { writePdf } from '../pdf/write.ts'
import { abreast, readingPaper } from '../sheet/abreast.ts'
import { laySheets } from '../sheet/layout.ts'
import type { PaperName } from '../sheet/paper.ts'
import type { Sheet } from '../sheet/sheet.ts'
import type { BlankPdf } from './blankPdf.ts'
import { builtSheets } from './builtSheets.ts'
import { drawTrial } from './drawTrial.ts'
import { type TrialPrediction, trialSheet } from './sheet.ts'

export interface BlankSheetsOptions {
  readonly paper: PaperName
  /** Day the pages bear, `2031-05-17`. */
  readonly date: string
  readonly version: string
  readonly fonts: LetteringFonts
  readonly prediction: TrialPrediction
}

/** Pages of blanks: one for a burn, then as many as it takes for the stove as it was built. */
export const blankSheets = (
  stove: Stove,
  { paper, date, version, prediction }: Omit<BlankSheetsOptions, 'fonts'>,
): readonly Sheet[] => {
  const sheets = [trialSheet(stove.name, prediction), ...builtSheets(stove)]
  const laid = laySheets(sheets.map(drawTrial), {
    paper: readingPaper(paper),
    stove: stove.name,
    date,
    version,
  })
  return abreast(laid, paper)
}

/** The same as a PDF; the same stove and options give the same bytes. Throws `BadInput` for a date that is none. */
export const blankSheetsPdf = async (stove: Stove, options: BlankSheetsOptions): Promise<BlankPdf> => {
  const { date, version, fonts } = options
  const sheets = blankSheets(stove, options)
  const title = `${stove.name}: sheets to fill in`
  const { bytes, missingLetters } = await writePdf(sheets, { title, date, version, fonts })
  return { pdf: bytes, pages: sheets.length, missingLetters }
}
