import { strToU8 } from 'fflate'
import { fileNameOf } from '#craft/fileName.ts'
import {
  type SeparateFormat,
  type TemplateOptions,
  templateDrawings,
  templatesPdf,
} from '#craft/templates.ts'
import type { Stove } from '#stove/model.ts'
import type { ArtefactFile } from './file.ts'

export type TemplateFormat = 'pdf' | SeparateFormat

export const TEMPLATE_FORMATS: readonly TemplateFormat[] = ['pdf', 'svg', 'dxf']

export interface TemplateFile extends ArtefactFile {
  readonly format: TemplateFormat
  /** Of the PDF, all of them; of a drawing, its own. */
  readonly title: string
  readonly pages: number
}

export interface TemplateFiles {
  readonly files: readonly TemplateFile[]
  readonly missingLetters: readonly string[]
}

/** All templates in one PDF, or each drawing as an SVG or DXF of its own, or all of these. Throws `BadInput` as `templatesPdf` does. */
export const templateFiles = async (
  stove: Stove,
  formats: readonly TemplateFormat[],
  options: TemplateOptions,
): Promise<TemplateFiles> => {
  const files: TemplateFile[] = []
  const missingLetters: string[] = []
  for (const format of formats) {
    if (format === 'pdf') {
      const made = await templatesPdf(stove, options)
      const name = `${fileNameOf(stove.name)}-templates-${options.paper.toLowerCase()}.pdf`
      files.push({ name, format, title: 'all templates', pages: made.pages, bytes: made.pdf })
      missingLetters.push(...made.missingLetters)
      continue
    }
    for (const { name, title, text } of templateDrawings(stove, format, options))
      files.push({ name, format, title, pages: 1, bytes: strToU8(text) })
  }
  return { files, missingLetters }
}
