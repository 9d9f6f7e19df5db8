import { sampleOf } from './sample.ts'

export interface LeastSquares {
  readonly coefficients: readonly number[]
  /** Of each coefficient, in its unit. */
  readonly standardErrors: readonly number[]
  readonly residuals: readonly number[]
  readonly df: number
  readonly residualSd: number
}

const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] as number), 0)

/** A column less its shadow on those before it is lost below this share of its length. */
const DEPENDENT = 1e-9

/**
 * Ordinary least squares by modified Gram–Schmidt, run twice over each column so that near-parallel ones stay apart
 * [bib:bjorck1996]. `columns` of the design, each as long as `y`. Null where columns depend on each other or no
 * observation is left over to judge the spread by.
 */
export const leastSquares = (
  columns: readonly (readonly number[])[],
  y: readonly number[],
): LeastSquares | null => {
  const p = columns.length
  const df = y.length - p
  if (df < 1) return null
  const basis: number[][] = []
  // Upper triangle, row by row.
  const r = Array.from({ length: p }, () => new Float64Array(p))
  const strip = (v: number[], keep: (k: number, by: number) => void): number[] => {
    let rest = v
    for (let pass = 0; pass < 2; pass++)
      for (const [k, q] of basis.entries()) {
        const by = inner(q, rest)
        keep(k, by)
        rest = rest.map((value, i) => value - by * (q[i] as number))
      }
    return rest
  }
  for (const [j, column] of columns.entries()) {
    const rest = strip([...column], (k, by) => {
      ;(r[k] as Float64Array)[j] = ((r[k] as Float64Array)[j] as number) + by
    })
    const size = Math.sqrt(inner(rest, rest))
    if (!(size > DEPENDENT * Math.sqrt(inner(column, column)))) return null
    ;(r[j] as Float64Array)[j] = size
    basis.push(rest.map((value) => value / size))
  }
  const onBasis = new Array<number>(p).fill(0)
  const residuals = strip([...y], (k, by) => {
    onBasis[k] = (onBasis[k] as number) + by
  })
  const inverse = inverseOf(r)
  const coefficients = inverse.map((row) => inner(row, onBasis))
  const variance = inner(residuals, residuals) / df
  return {
    coefficients,
    standardErrors: inverse.map((row) => Math.sqrt(variance * inner(row, row))),
    residuals,
    df,
    residualSd: Math.sqrt(variance),
  }
}

/** Rows of the inverse of an upper triangle, from its last row up. */
const inverseOf = (r: readonly Float64Array[]): readonly number[][] => {
  const p = r.length
  const rows = Array.from({ length: p }, () => new Array<number>(p).fill(0))
  for (let i = p - 1; i >= 0; i--) {
    const [row, triangle] = [rows[i] as number[], r[i] as Float64Array]
    for (let column = i; column < p; column++) {
      let sum = Number(column === i)
      for (let k = i + 1; k < p; k++)
        sum -= (triangle[k] as number) * ((rows[k] as number[])[column] as number)
      row[column] = sum / (triangle[i] as number)
    }
  }
  return rows
}

/** Centred, so that the level does not drown the slope. */
export const centred = (values: readonly number[]): readonly number[] => {
  const { mean } = sampleOf(values)
  return values.map((value) => value - mean)
}
