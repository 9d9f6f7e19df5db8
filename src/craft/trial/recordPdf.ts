import { type LaidPage, layPages } from '../page/lay.ts'
import type { LetteringFonts } from '../pdf/face.ts'
import { writePdf } from '../pdf/write.ts'
import { pageSheet } from '../sheet/pageSheet.ts'
import type { PaperName } from '../sheet/paper.ts'
import type { BlankPdf } from './blankPdf.ts'
import { recordSections } from './recordSheet.ts'

export interface RecordPdfOptions {
  readonly paper: PaperName
  /** Day the pages bear, `2031-05-17`. */
  readonly date: string
  readonly version: string
  readonly fonts: LetteringFonts
}

const FOOT =
  'Carbon monoxide: burn outdoors only, never in a tent, shelter or vehicle; char gives it off long after the flame.'

/** The pages of an empty trial sheet, as they are set; `stove` may be empty. */
export const recordPages = (
  stove: string,
  { paper, date, version }: Omit<RecordPdfOptions, 'fonts'>,
): readonly LaidPage[] => {
  const title = stove === '' ? 'Trial sheet' : `${stove}: trial sheet`
  const words = { title, issue: `${date} · Tinwright ${version}`, foot: FOOT }
  const of = layPages(recordSections(stove), paper, words).length
  return layPages(recordSections(stove), paper, words, { first: 1, of })
}

/** The same as a PDF; the same name and options give the same bytes. Throws `BadInput` for a date that is none. */
export const recordPdf = async (stove: string, options: RecordPdfOptions): Promise<BlankPdf> => {
  const { date, version, fonts } = options
  const pages = recordPages(stove, options)
  const title = stove === '' ? 'Trial sheet' : `${stove}: trial sheet`
  const { bytes, missingLetters } = await writePdf(pages.map(pageSheet), { title, date, version, fonts })
  return { pdf: bytes, pages: pages.length, missingLetters }
}
