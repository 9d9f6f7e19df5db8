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
export const TITLE: Type = { size: 30, leading: 36, bold: true }

/** Width of text in the lettering of the house [pt]; a letter that is not known counts a whole em. */
export const widthOf = (text: string, { size, bold }: Pick<Type, 'size' | 'bold'>): number => {
  const column = bold ? 1 : 0
  let thousandths = 0
  for (const letter of text) thousandths += ADVANCE[letter.codePointAt(0) ?? 0]?.[column] ?? 1000
  return (thousandths / 1000) * size
}

/** Values and their units stay in one line: `5/8 in`, `31 mm`, `± 1 mm`. */
const UNBREAKABLE =
  /(?<=[\d±×–−]) (?=(?:\d+\/\d+|[±×]|mm|cm|in\b|m\b|g|kg|oz|lb|L\b|mL|kW|W\b|°|%|Pa|hPa|min|h\b|s\b|MJ|Btu|ft|MPa))|(?<=[±×]) (?=\d)/g

const NO_BREAK = '\u00a0'

/** Breaks text at its spaces into lines no wider than `width`; a word that is wider is cut where it has to be [pt]. */
export const breakLines = (text: string, type: Type, width: number): readonly string[] => {
  const lines: string[] = []
  let line = ''
  const push = (word: string): void => {
    const longer = line === '' ? word : `${line} ${word}`
    if (widthOf(longer.replaceAll(NO_BREAK, ' '), type) <= width) {
      line = longer
      return
    }
    if (line !== '') lines.push(line)
    line = ''
    if (widthOf(word.replaceAll(NO_BREAK, ' '), type) <= width) {
      line = word
      return
    }
    // Words of a unit may part after all before a word is cut.
    if (word.includes(NO_BREAK)) {
      for (const part of word.split(NO_BREAK)) push(part)
      return
    }
    for (const letter of word) {
      if (line !== '' && widthOf(line + letter, type) > width) {
        lines.push(line)
        line = ''
      }
      line += letter
    }
  }
  for (const word of text.replace(UNBREAKABLE, NO_BREAK).split(' ')) push(word)
  if (line !== '') lines.push(line)
  return lines.map((one) => one.replaceAll(NO_BREAK, ' '))
}
