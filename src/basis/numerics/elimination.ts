/**
 * Solves A x = b in place for a diagonally dominant matrix (rows or columns), by Gaussian elimination without pivoting.
 * `a` holds the n × n matrix by rows and is overwritten; `x` comes in as b and goes out as the solution. Such systems
 * need no pivoting (any text on numerical linear algebra); for others the answer may be anything.
 */
export const eliminateDominant = (a: Float64Array, n: number, x: Float64Array): void => {
  for (let c = 0; c < n; c++) {
    const diagonal = a[c * n + c] as number
    for (let r = c + 1; r < n; r++) {
      const entry = a[r * n + c] as number
      if (entry === 0) continue
      const factor = entry / diagonal
      for (let j = c + 1; j < n; j++)
        a[r * n + j] = (a[r * n + j] as number) - factor * (a[c * n + j] as number)
      x[r] = (x[r] as number) - factor * (x[c] as number)
    }
  }
  substituteBack(a, n, x)
}

/** Pivots below this mean a singular matrix. */
const SINGULAR = 1e-300

/** The same for any matrix, with partial pivoting. False, and `x` of no use, where the matrix is singular. */
export const eliminatePivoted = (a: Float64Array, n: number, x: Float64Array): boolean => {
  for (let c = 0; c < n; c++) {
    let pivot = c
    let size = Math.abs(a[c * n + c] as number)
    for (let r = c + 1; r < n; r++) {
      const other = Math.abs(a[r * n + c] as number)
      if (other > size) {
        size = other
        pivot = r
      }
    }
    if (!(size > SINGULAR)) return false
    if (pivot !== c) swapRows(a, n, x, c, pivot)
    const diagonal = a[c * n + c] as number
    for (let r = c + 1; r < n; r++) {
      const entry = a[r * n + c] as number
      if (entry === 0) continue
      const factor = entry / diagonal
      for (let j = c + 1; j < n; j++)
        a[r * n + j] = (a[r * n + j] as number) - factor * (a[c * n + j] as number)
      x[r] = (x[r] as number) - factor * (x[c] as number)
    }
  }
  substituteBack(a, n, x)
  return true
}

const swapRows = (a: Float64Array, n: number, x: Float64Array, c: number, pivot: number): void => {
  for (let j = c; j < n; j++) {
    const swap = a[c * n + j] as number
    a[c * n + j] = a[pivot * n + j] as number
    a[pivot * n + j] = swap
  }
  const swap = x[c] as number
  x[c] = x[pivot] as number
  x[pivot] = swap
}

const substituteBack = (a: Float64Array, n: number, x: Float64Array): void => {
  for (let r = n - 1; r >= 0; r--) {
    let sum = x[r] as number
    for (let j = r + 1; j < n; j++) sum -= (a[r * n + j] as number) * (x[j] as number)
    x[r] = sum / (a[r * n + r] as number)
  }
}
