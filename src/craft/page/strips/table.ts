import type { Table } from '../block.ts'
import { drawLine, drawRule, INK, MUTED } from '../paint.ts'
import { breakLines, SMALL, SMALL_STRONG, type Type, widthOf } from '../type.ts'
import type { Strip } from './strip.ts'

const CELL_GAP = 10
/** A table’s row of three lines and more may stand alone on a page [pt]. */
const TALL_ROW = 36

/** Column widths by what they hold: each at least its widest word, the rest shared by the length of its text. */
const columnWidths = ({ head, rows, widths }: Table, width: number): readonly number[] => {
  const room = width - CELL_GAP * (head.length - 1)
  if (widths !== undefined) {
    const sum = widths.reduce((total, one) => total + one, 0)
    return widths.map((one) => (one / sum) * room)
  }
  const cells = (column: number): readonly string[] => rows.map((row) => row[column] ?? '')
  const natural = head.map((title, column) =>
    Math.max(widthOf(title, SMALL_STRONG), ...cells(column).map((cell) => widthOf(cell, SMALL))),
  )
  const total = natural.reduce((sum, one) => sum + one, 0)
  if (total <= room) return natural.map((one, i) => (i === natural.length - 1 ? one + room - total : one))
  const least = head.map(
    (title, column) =>
      Math.max(
        ...[title, ...cells(column)]
          .flatMap((cell) => cell.split(' '))
          .map((word) => widthOf(word, SMALL_STRONG)),
      ) + 1,
  )
  const spare = room - least.reduce((sum, one) => sum + one, 0)
  const wish = natural.map((one, i) => Math.max(0, one - (least[i] as number)))
  const wished = wish.reduce((sum, one) => sum + one, 0) || 1
  return least.map((one, i) => one + (Math.max(0, spare) * (wish[i] as number)) / wished)
}

/** A row a strip; its head is drawn again where it goes on. */
export const table = (block: Table, width: number): readonly Strip[] => {
  const widths = columnWidths(block, width)
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, one) => sum + one + CELL_GAP, 0))
  const row = (cells: readonly string[], type: Type, ink: string, ruled: number): Strip => {
    const lines = cells.map((cell, i) => breakLines(cell, type, widths[i] as number))
    const height = Math.max(1, ...lines.map(({ length }) => length)) * type.leading + 5
    return {
      height,
      before: 0,
      keep: false,
      draw: (canvas, x, y) => {
        for (const [i, cell] of lines.entries()) {
          const right = block.align?.[i] === 'right'
          const at = x + (lefts[i] as number) + (right ? (widths[i] as number) : 0)
          for (const [k, line] of cell.entries())
            drawLine(canvas, at, y + 2 + type.leading * (k + 0.76), line, {
              type,
              ink,
              anchor: right ? 'end' : 'start',
            })
        }
        drawRule(canvas, x, x + width, y + height, ruled, ruled > 0.6 ? INK : undefined)
      },
    }
  }
  const head: Strip = { ...row(block.head, SMALL_STRONG, MUTED, 0.8), keep: true }
  const titled = block.head.some((title) => title !== '')
  const rows = block.rows.map((cells) => row(cells, SMALL, INK, 0.4))
  const isLow = (index: number): boolean => (rows[index]?.height ?? TALL_ROW) < TALL_ROW
  return [
    ...(titled ? [{ ...head, before: 5 }] : []),
    ...rows.map(
      (strip, i): Strip => ({
        ...strip,
        before: titled || i > 0 ? 0 : 5,
        // Neither a lone first row nor a lone last one, where it is a low one.
        keep: (i === 0 && rows.length > 1 && isLow(0)) || (i === rows.length - 2 && isLow(i + 1)),
        ...(titled ? { head } : {}),
      }),
    ),
  ]
}
