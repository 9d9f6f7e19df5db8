/** The first of two systems of units: `182 W` of `182 W (620 Btu/h)`. */
export const metricPart = (text: string): string => text.replace(/ \(.*\)$/, '')

/** The second: `620 Btu/h`; null where there is only one. */
const customaryPart = (text: string): string | null => / \((.*)\)$/.exec(text)?.[1] ?? null

/** The same rows in the second system, the cells of figures only; null where no row has one. */
export const inCustomary = (
  rows: readonly (readonly string[])[],
  figures: readonly number[],
): readonly (readonly string[])[] | null => {
  const found = rows.flatMap((row) =>
    figures.some((i) => customaryPart(row[i] ?? '') !== null)
      ? [row.map((cell, i) => (figures.includes(i) ? (customaryPart(cell) ?? cell) : cell))]
      : [],
  )
  return found.length === 0 ? null : found
}
