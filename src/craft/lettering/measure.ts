import { brokenLines } from '#basis/text/breaking.ts'
import { ADVANCE, CAP_HEIGHT } from './sourceSans.ts'

/**
 * Sizes of text before any writer has drawn it, so that a label can be kept clear of the holes in the
 * one drawing that PDF, SVG and DXF share. Sizes are heights of a capital; lengths are millimetres.
 */

/** From this height of a capital on, lettering is semibold [mm]. */
const SEMIBOLD_FROM = 3

export type Weight = 'regular' | 'semibold'

export const weightOf = (size: number): Weight => (size >= SEMIBOLD_FROM ? 'semibold' : 'regular')

/** The em that gives capitals of the height `size` [mm]. */
export const emOf = (size: number): number => (size * 1000) / CAP_HEIGHT

/** How far text moves the pen [mm]. A letter the table does not know counts a whole em, too wide rather than too narrow. */
export const textWidth = (text: string, size: number): number => {
  const column = weightOf(size) === 'regular' ? 0 : 1
  let thousandths = 0
  for (const letter of text) thousandths += ADVANCE[letter.codePointAt(0) ?? 0]?.[column] ?? 1000
  return (thousandths / 1000) * emOf(size)
}

/** Breaks text into lines no wider than `width`, values whole where they can be; a word that is wider stands alone. */
export const breakLines = (text: string, size: number, width: number): readonly string[] =>
  brokenLines(text, (line) => textWidth(line, size) <= width)

/** Text cut short with an ellipsis where it is wider than `width` [mm]. */
export const shortened = (text: string, size: number, width: number): string => {
  if (textWidth(text, size) <= width) return text
  const letters = [...text]
  while (letters.length > 0 && textWidth(`${letters.join('')}…`, size) > width) letters.pop()
  return `${letters.join('').trimEnd()}…`
}
