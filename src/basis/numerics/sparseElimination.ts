/**
 * Gaussian elimination without pivoting on a matrix whose pattern stays while its numbers change: which entries fill up and
 * in what order unknowns go is worked out once, so that a solve costs in proportion to what is not zero. Good for
 * diagonally dominant matrices (rows or columns), which need no pivoting; for others the answer may be anything.
 *
 * The unknowns go in the order of least neighbours first, Tinney & Walker's second scheme [bib:tinney1967]. The pattern is
 * taken as symmetric.
 */
export interface SparseElimination {
  readonly size: number
  /** Length of the arrays that hold a matrix. The last place is a bin: what is put there does not count. */
  readonly places: number
  /** Where the entry of a row and column is held. The bin for a row or column below 0. */
  place(row: number, column: number): number
  /**
   * Solves A x = b in place: `a` is overwritten, `x` comes in as b and goes out as the solution; places of `x` from `size`
   * on are left alone. False, and `x` of no use, where a pivot vanishes.
   */
  solve(a: Float64Array, x: Float64Array): boolean
}

/** Pivots below this mean a singular matrix. */
const SINGULAR = 1e-300

/** Plans the elimination for a matrix with a diagonal and, for each pair of unknowns, the two entries that couple them. */
export const planElimination = (
  size: number,
  pairs: Iterable<readonly [number, number]>,
): SparseElimination => {
  const { order, later } = eliminationOrder(size, pairs)

  // Held pivot by pivot: the diagonal, then its row to the right, then its column below, in the same order of unknowns.
  const placeOf = new Int32Array(size * size).fill(-1)
  const pivot = new Int32Array(size)
  const first = new Int32Array(size + 1)
  let count = 0
  for (let p = 0; p < size; p++) {
    const c = order[p] as number
    const rest = later[p] as readonly number[]
    pivot[p] = count
    placeOf[c * size + c] = count++
    for (const j of rest) placeOf[c * size + j] = count++
    for (const i of rest) placeOf[i * size + c] = count++
    first[p + 1] = (first[p] as number) + rest.length
  }
  const target: number[] = []
  for (const rest of later)
    for (const i of rest) for (const j of rest) target.push(placeOf[i * size + j] as number)
  const orders = Int32Array.from(order)
  const unknowns = Int32Array.from(later.flat())
  const targets = Int32Array.from(target)

  const solve = (a: Float64Array, x: Float64Array): boolean => {
    let t = 0
    for (let p = 0; p < size; p++) {
      const begin = first[p] as number
      const n = (first[p + 1] as number) - begin
      const diagonal = pivot[p] as number
      const d = a[diagonal] as number
      if (!(Math.abs(d) > SINGULAR)) return false
      // Held inverted from here on, for the way back.
      const inverse = 1 / d
      a[diagonal] = inverse
      const known = x[orders[p] as number] as number
      for (let i = 0; i < n; i++) {
        const factor = (a[diagonal + n + 1 + i] as number) * inverse
        for (let j = 1; j <= n; j++) {
          const at = targets[t++] as number
          a[at] = (a[at] as number) - factor * (a[diagonal + j] as number)
        }
        const row = unknowns[begin + i] as number
        x[row] = (x[row] as number) - factor * known
      }
    }
    for (let p = size - 1; p >= 0; p--) {
      const begin = first[p] as number
      const n = (first[p + 1] as number) - begin
      const diagonal = pivot[p] as number
      const row = orders[p] as number
      let sum = x[row] as number
      for (let j = 0; j < n; j++)
        sum -= (a[diagonal + 1 + j] as number) * (x[unknowns[begin + j] as number] as number)
      x[row] = sum * (a[diagonal] as number)
    }
    return true
  }

  return {
    size,
    places: count + 1,
    place: (row, column) => {
      if (row < 0 || column < 0) return count
      const at = placeOf[row * size + column] as number
      if (at < 0) throw new Error(`no pair couples unknowns ${row} and ${column}`)
      return at
    },
    solve,
  }
}

/** Takes the unknown with the fewest neighbours left, and couples those with each other, until none is left. */
const eliminationOrder = (
  size: number,
  pairs: Iterable<readonly [number, number]>,
): { readonly order: readonly number[]; readonly later: readonly (readonly number[])[] } => {
  const joined = new Uint8Array(size * size)
  const degree = new Int32Array(size)
  const join = (i: number, j: number): void => {
    if (i === j || joined[i * size + j] === 1) return
    joined[i * size + j] = 1
    joined[j * size + i] = 1
    degree[i] = (degree[i] as number) + 1
    degree[j] = (degree[j] as number) + 1
  }
  for (const [i, j] of pairs) if (i >= 0 && j >= 0) join(i, j)
  const order: number[] = []
  const later: number[][] = []
  const gone = new Uint8Array(size)
  for (let p = 0; p < size; p++) {
    let next = -1
    for (let i = 0; i < size; i++)
      if (gone[i] === 0 && (next < 0 || (degree[i] as number) < (degree[next] as number))) next = i
    gone[next] = 1
    const around: number[] = []
    for (let j = 0; j < size; j++)
      if (gone[j] === 0 && joined[next * size + j] === 1) {
        around.push(j)
        degree[j] = (degree[j] as number) - 1
      }
    for (const i of around) for (const j of around) join(i, j)
    order.push(next)
    later.push(around)
  }
  return { order, later }
}
