import { columns } from '#compose/page/text.ts'
import { type FigureRow, figureCells } from '#craft/told/figureRow.ts'

/** Figures in both systems of units, with their bands beside them. */
export const figureTable = (rows: readonly FigureRow[]): string => {
  const banded = rows.some(({ band }) => band !== null)
  return columns(
    banded
      ? [['', 'median', '5 to 95 %'], ...rows.map((row) => [row.label, ...figureCells(row)])]
      : rows.map((row) => [row.label, figureCells(row)[0]]),
    ['left', 'left', 'left'],
  )
}
