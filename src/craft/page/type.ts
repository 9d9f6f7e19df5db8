import { brokenLines } from '#basis/text/breaking.ts'
import { ADVANCE } from '../lettering/sourceSans.ts'

/** How text of a page is set. Sizes in points. */
export interface Type {
  readonly size: number
  readonly leading: number
  readonly bold: boolean
}

export const BODY: Type = { size: 9.6, leading: 13.2, bold: false }
export const STRONG: Type = { ...BODY, bold: true }
export const SMALL: Type = { size: 8.2, leading: 11, bold: false }
export const SMALL_STRONG: Type = { ...SMALL, bold: true }
export const FIGURE: Type = { size: 15, leading: 18, bold: true }
export const SUBHEADING: Type = { size: 11.5, leading: 15, bold: true }
export const HEADING: Type = { size: 17, leading: 22, bold: true }

/** Width of text in the lettering of the house [pt]; a letter that is not known counts a whole em. */
export const widthOf = (text: string, { size, bold }: Pick<Type, 'size' | 'bold'>): number => {
  const column = bold ? 1 : 0
  let thousandths = 0
  for (const letter of text) thousandths += ADVANCE[letter.codePointAt(0) ?? 0]?.[column] ?? 1000
  return (thousandths / 1000) * size
}

/** Lines no wider than `width`, values whole where they can be; a word that is wider is cut where it has to be [pt]. */
export const breakLines = (text: string, type: Type, width: number): readonly string[] =>
  brokenLines(text, (line) => widthOf(line, type) <= width).flatMap((line) => {
    if (widthOf(line, type) <= width) return [line]
    const pieces = ['']
    for (const letter of line) {
      const last = pieces.pop() as string
      if (last !== '' && widthOf(last + letter, type) > width) pieces.push(last, letter)
      else pieces.push(last + letter)
    }
    return pieces
  })
