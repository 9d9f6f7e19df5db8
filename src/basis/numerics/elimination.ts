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
  for (let r = n - 1; r >= 0; r--) {
    let sum = x[r] as number
    for (let j = r + 1; j < n; j++) sum -= (a[r * n + j] as number) * (x[j] as number)
    x[r] = sum / (a[r * n + r] as number)
  }
}
