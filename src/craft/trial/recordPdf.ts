import { type LaidPage, layPages } from '../page/lay.ts'
import type { LetteringFonts } from '../pdf/face.ts'
import { writePdf } from '../pdf/write.ts'
import type { PaperName } from '../sheet/paper.ts'
import type { Sheet } from '../sheet/sheet.ts'
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

const MM_PER_POINT = 25.4 / 72

const asSheet = ({ svg, width, height, section }: LaidPage): Sheet => ({
  size: { width: width * MM_PER_POINT, height: height * MM_PER_POINT },
  label: section,
  pieces: [],
  furniture: [],
  pictures: [{ svg, at: { x: 0, y: height * MM_PER_POINT }, width: width * MM_PER_POINT }],
})

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
export const recordPdf = async (
  stove: string,
  options: RecordPdfOptions,
): Promise<{
  readonly pdf: Uint8Array
  readonly pages: number
  readonly missingLetters: readonly string[]
}> => {
  const { date, version, fonts } = options
  const pages = recordPages(stove, options)
  const title = stove === '' ? 'Trial sheet' : `${stove}: trial sheet`
  const { bytes, missingLetters } = await writePdf(pages.map(asSheet), { title, date, version, fonts })
  return { pdf: bytes, pages: pages.length, missingLetters }
}
