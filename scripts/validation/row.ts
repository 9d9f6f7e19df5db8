import type { Band } from '#science/bands/bands.ts'

/**
 * What a published number proves.
 * `measurement`: nature was asked. `reference data`: tables that a field agrees on. `proof of code`: the same law worked out
 * by other hands or another program. `from memory`: no source was read; listed apart, counted nowhere, never fails.
 * `given`: the model was told so; listed apart for the same reason.
 */
export type Standing = 'measurement' | 'reference data' | 'proof of code' | 'from memory' | 'given'

export const COUNTED: readonly Standing[] = ['measurement', 'reference data', 'proof of code']

/** How near ours must come: a share of the published number, the table's own rounding left aside, or a difference. */
export type Allowed =
  | { readonly share: number; readonly rounding?: number }
  /** In the row's unit. */
  | { readonly by: number }

/** One number of ours beside one that was published. */
export interface PointRow {
  /** Unique; the name of a known miss. */
  readonly check: string
  /** Rows of one group share a line on the page, where the worst of them stands. */
  readonly group?: string
  readonly published: number
  readonly ours: number
  readonly unit: string
  readonly allowed: Allowed
}

/** Our band beside what was published of a stove, a number or a range. */
export interface BandRow {
  readonly check: string
  readonly published: number | readonly [low: number, high: number]
  readonly ours: Band
  readonly unit: string
  /** What the number was measured on, and what we worked out in its place. */
  readonly stove: string
  readonly source: string
}

export type OutsideRow = PointRow | BandRow

export interface CheckSet {
  readonly title: string
  readonly source: string
  readonly standing: Standing
  /** Why this tolerance, or what else a reader should know. */
  readonly note: string
  readonly rows: () => readonly OutsideRow[]
}

export interface Subject {
  readonly name: string
  readonly sets: readonly CheckSet[]
}

export const isBand = (row: OutsideRow): row is BandRow => typeof row.ours !== 'number'

/** How far a point is off, in the measure that is allowed [1 or the row's unit]. */
export const missOf = ({ published, ours, allowed }: PointRow): number => {
  const off = Math.abs(ours - published)
  if ('by' in allowed) return off
  return Math.max(0, off - (allowed.rounding ?? 0)) / Math.abs(published)
}

const allowedMiss = ({ allowed }: PointRow): number => ('by' in allowed ? allowed.by : allowed.share)

/** A point hits within its tolerance. A band hits when all that was published lies in it: in part is a miss. */
export const hits = (row: OutsideRow): boolean => {
  if (!isBand(row)) return missOf(row) <= allowedMiss(row)
  const [low, high] = rangeOf(row)
  return low >= row.ours.low && high <= row.ours.high
}

export const rangeOf = ({ published }: BandRow): readonly [number, number] =>
  typeof published === 'number' ? [published, published] : published

/** A share in per cent, two digits; what is lost in rounding is said to be less than it. */
export const percent = (share: number): string => {
  const p = 100 * share
  if (p < 0.001) return '< 0.001 %'
  return `${p < 100 ? Number(p.toPrecision(2)) : Math.round(p)} %`
}

/** Six digits, no zeros behind them, a real minus and powers of ten in words of the trade. */
export const shown = (value: number, digits = 6): string => {
  const size = Math.abs(value)
  const plain = value === 0 || (size >= 1e-3 && size < 1e6)
  const text = plain
    ? String(Number(value.toPrecision(digits)))
    : value.toExponential(digits - 1).replace(/\.?0*e\+?/, 'e')
  return text.replace(/-/g, '−')
}

export const offText = (row: OutsideRow): string => {
  if (isBand(row)) {
    const [low, high] = rangeOf(row)
    if (hits(row)) return 'inside'
    if (high >= row.ours.low && low <= row.ours.high) return 'in part'
    return high < row.ours.low ? percentOver(row.ours.low, high) : percentOver(low, row.ours.high, '−')
  }
  const miss = missOf(row)
  return 'by' in row.allowed ? `${shown(miss, 2)} ${row.unit}`.trim() : percent(miss)
}

/** How far the nearer end of our band is from what was published. */
const percentOver = (larger: number, smaller: number, sign = '+'): string =>
  `${sign}${Math.round(100 * (sign === '+' ? larger / smaller - 1 : 1 - smaller / larger))} %`

export const allowedText = (row: PointRow): string =>
  'by' in row.allowed ? `${shown(row.allowed.by, 2)} ${row.unit}`.trim() : percent(row.allowed.share)
