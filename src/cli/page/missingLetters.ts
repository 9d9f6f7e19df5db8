import { wrap } from '#compose/page/text.ts'

/** Letters of a maker's words that the font lacks, said where they print as something else; null where it has all. */
export const missingLettersLine = (
  letters: readonly string[],
  width: number,
  where = 'they print as “?”',
): string | null =>
  letters.length === 0 ? null : wrap(`The font has no letter for ${letters.join(' ')}; ${where}.`, width)
