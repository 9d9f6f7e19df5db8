import { labelled, wrap } from '#compose/page/text.ts'
import type { Bands } from '#science/bands/bands.ts'
import { coefficientTable } from '#science/coefficients.ts'

const meaning = (coefficient: keyof typeof coefficientTable, correlation: number): string =>
  `${correlation < 0 ? '−' : '+'} ${coefficientTable[coefficient].meaning}`

/** Three of each are enough on a page. */
const NAMED = 3

/**
 * What a prediction hangs on most: the coefficients that move each figure, in words.
 * @param figures keys of the bands with their names on the page
 */
export const mattersBlock = <K extends string>(
  { matters }: Bands<K>,
  figures: readonly (readonly [K, string])[],
  width: number,
): string | null => {
  const rows = figures.flatMap(([key, label]): readonly (readonly [string, string])[] => {
    const pulls = matters[key].slice(0, NAMED)
    return pulls.length === 0
      ? []
      : [[label, pulls.map(({ coefficient, correlation }) => meaning(coefficient, correlation)).join('; ')]]
  })
  if (rows.length === 0) return null
  return [
    wrap(
      'What these hang on most: + raises the figure, − lowers it. A trial or a measurement of it is worth most.',
      width,
    ),
    labelled(rows, width),
  ].join('\n')
}
