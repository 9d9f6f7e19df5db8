import type { QuantityKey } from '#basis/quantities.ts'
import type { Band } from '#science/bands/bands.ts'
import { asShown, bandText, figureText } from './band.ts'

/** One figure of a prediction on the page. */
export interface FigureRow {
  readonly label: string
  /** Null: there is no such figure. */
  readonly value: number | null
  readonly key: QuantityKey
  /** Its unit where that is not the usual one, and its second unit where the trade has two. */
  readonly unit?: string
  readonly other?: string
  readonly band: Band | null
}

/** A figure and its band as text, in both systems of units where the trade has two. */
export const figureCells = ({ value, key, unit, other, band }: FigureRow): readonly [string, string] => {
  const inBoth = (text: (symbol?: string) => string): string =>
    other === undefined ? text(unit) : `${text(unit)} (${text(other)})`
  return [
    value === null
      ? 'none'
      : inBoth((symbol) =>
          figureText(symbol === other && unit === undefined ? asShown(value, key) : value, key, symbol),
        ),
    band === null ? '' : inBoth((symbol) => bandText(band, key, symbol)),
  ]
}
