import type { QuantityKey } from '#basis/quantities.ts'
import type { Band } from '#science/bands/bands.ts'
import { bandText, figureText } from './band.ts'
import { type Align, columns } from './text.ts'

/** One figure of a prediction on the page. */
export interface FigureRow {
  readonly label: string
  /** Null: there is no such figure; `none` says so. */
  readonly value: number | null
  readonly key: QuantityKey
  /** Its second unit, where the trade has two. */
  readonly other?: string
  readonly band: Band | null
  readonly none?: string
}

const cells = ({ value, key, band, none = 'none' }: FigureRow, unit?: string): readonly [string, string] => [
  value === null ? none : figureText(value, key, unit),
  band === null ? '' : bandText(band, key, unit),
]

const widest = (text: string): number => Math.max(...text.split('\n').map((line) => line.length))

const HEAD = ['median', '5 to 95 %'] as const

/**
 * Figures with their bands, in both systems of units: side by side where the page is wide enough, else the second below
 * the first.
 */
export const figureTable = (rows: readonly FigureRow[], width: number): string => {
  const banded = rows.some(({ band }) => band !== null)
  const keep = (pair: readonly [string, string]): readonly string[] => (banded ? pair : pair.slice(0, 1))
  const align: readonly Align[] = banded ? ['left', 'right', 'left'] : ['left', 'right']
  const head = banded ? [['', ...HEAD]] : []
  const usual = rows.map((row) => [row.label, ...keep(cells(row))])
  const others = rows.map((row) =>
    keep(row.other === undefined || row.value === null ? ['', ''] : cells(row, row.other)),
  )
  const both = columns(
    [
      ...head.map((line) => [...line, ...keep(HEAD)]),
      ...usual.map((line, i) => [...line, ...(others[i] as readonly string[])]),
    ],
    [...align, ...align.slice(1)],
  )
  if (widest(both) <= width) return both
  const second = rows.flatMap((row, i) =>
    row.other === undefined || row.value === null ? [] : [[row.label, ...(others[i] as readonly string[])]],
  )
  return [columns([...head, ...usual], align), columns(second, align)].join('\n\n')
}
