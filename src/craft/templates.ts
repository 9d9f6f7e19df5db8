import { BadInput, type Problem } from '#basis/problem.ts'
import type { Stove } from '#stove/model.ts'
import { flatPatterns } from './flat/pattern.ts'
import type { LetteringFonts } from './pdf/face.ts'
import { writePdf } from './pdf/write.ts'
import { laySheets } from './sheet/layout.ts'
import type { PaperName } from './sheet/paper.ts'
import type { Sheet } from './sheet/sheet.ts'

export interface TemplateOptions {
  readonly paper: PaperName
  /** Day the pages bear, `2031-05-17`. */
  readonly date: string
  /** Of the program, for the foot of every page. */
  readonly version: string
  readonly fonts: LetteringFonts
}

export interface Templates {
  readonly pdf: Uint8Array
  readonly pages: number
  readonly sheets: readonly Sheet[]
  /** Letters of the stove's own names that the fonts do not have; they print as `?`. */
  readonly missingLetters: readonly string[]
}

const nothingToDrill = (stove: Stove): Problem => ({
  code: 'templates.nothing',
  field: 'parts',
  value: [...stove.parts.keys()].join(', '),
  allowed: 'at least one part with an opening',
  fix: 'Give a part an opening: templates show what is drilled and cut.',
})

/**
 * The true-size templates of a stove as a PDF. The same stove and options give the same bytes.
 * Throws `BadInput` for a stove with nothing to drill or cut, a band that goes round no can, a date that is none.
 */
export const templatesPdf = async (stove: Stove, options: TemplateOptions): Promise<Templates> => {
  const { paper, date, version, fonts } = options
  const drawings = flatPatterns(stove)
  if (drawings.length === 0) throw new BadInput([nothingToDrill(stove)])
  const sheets = laySheets(drawings, { paper, stove: stove.name, date, version })
  const title = `${stove.name}: drilling templates`
  const { bytes, missingLetters } = await writePdf(sheets, { title, date, version, fonts })
  return { pdf: bytes, pages: sheets.length, sheets, missingLetters }
}
