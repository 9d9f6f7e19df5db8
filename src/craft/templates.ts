import { BadInput, type Problem } from '#basis/problem.ts'
import type { Stove } from '#stove/model.ts'
import { dayOf } from './day.ts'
import type { Drawing } from './drawing.ts'
import { dxfDrawing } from './dxf/write.ts'
import { fileNameOf } from './fileName.ts'
import { flatPatterns } from './flat/pattern.ts'
import type { LetteringFonts } from './pdf/face.ts'
import { writePdf } from './pdf/write.ts'
import { laySheets } from './sheet/layout.ts'
import { looseSheet } from './sheet/looseSheet.ts'
import type { PaperName } from './sheet/paper.ts'
import type { Sheet } from './sheet/sheet.ts'
import { svgDrawing } from './svg/write.ts'

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

const patternsOf = (stove: Stove): readonly Drawing[] => {
  const drawings = flatPatterns(stove)
  if (drawings.length === 0) throw new BadInput([nothingToDrill(stove)])
  return drawings
}

/**
 * The true-size templates of a stove as a PDF. The same stove and options give the same bytes.
 * Throws `BadInput` for a stove with nothing to drill or cut, a band that goes round no can, a date that is none.
 */
export const templatesPdf = async (stove: Stove, options: TemplateOptions): Promise<Templates> => {
  const { paper, date, version, fonts } = options
  const sheets = laySheets(patternsOf(stove), { paper, stove: stove.name, date, version })
  const title = `${stove.name}: drilling templates`
  const { bytes, missingLetters } = await writePdf(sheets, { title, date, version, fonts })
  return { pdf: bytes, pages: sheets.length, sheets, missingLetters }
}

export type SeparateFormat = 'svg' | 'dxf'

/** One drawing as a file of its own. */
export interface DrawingFile {
  readonly name: string
  readonly title: string
  readonly format: SeparateFormat
  readonly text: string
}

const WRITERS = { svg: svgDrawing, dxf: dxfDrawing } as const satisfies Record<SeparateFormat, unknown>

/**
 * Every drawing of a stove as a file of its own, uncut: for a screen, a plotter or a machine that follows
 * lines. Named by stove, number and drawing: `redshank-02-wrap-of-fuel-can.svg`. The same stove and options
 * give the same text. Throws `BadInput` as `templatesPdf` does.
 */
export const templateDrawings = (
  stove: Stove,
  format: SeparateFormat,
  { date, version }: Pick<TemplateOptions, 'date' | 'version'>,
): readonly DrawingFile[] => {
  dayOf(date)
  return patternsOf(stove).map((drawing, index): DrawingFile => {
    const number = String(index + 1).padStart(2, '0')
    const { title } = drawing
    return {
      name: `${fileNameOf(stove.name)}-${number}-${fileNameOf(title)}.${format}`,
      title,
      format,
      text: WRITERS[format](looseSheet(drawing, { stove: stove.name, date, version })),
    }
  })
}
