/**
 * A gas at one point of the search for equilibrium, seen through its components: the most plentiful species that are
 * independent of one another, as many as there are elements. Every other species is made of them, as CO of CO2 − ½ O2.
 *
 * Balances written for elements drown in rounding where one element is all but used up: at 300 K a gas of CO2 and H2O
 * alone has C, H and O in play and room for two of them, and the third potential hangs on species of 1e-30. Written
 * for components, the balance of such traces holds traces alone and keeps all its digits. The choice of components is
 * that of Smith & Missen's optimised stoichiometric method [bib:smith1982].
 */
export interface Linearisation {
  /** Amount of each component that makes up all the atoms [mol]. */
  readonly supply: Float64Array
  /** Components that make one mole of a species: row by species. */
  readonly makeup: readonly Float64Array[]
  /** Element potentials from component potentials: row by element. */
  readonly toElements: readonly Float64Array[]
  /** Sum over species of makeup × moles [mol]. */
  readonly held: Float64Array
  /** Answers H x = right side, with H = Σ makeup makeupᵀ moles. */
  solve(rightSide: Float64Array): Float64Array
}

type Row = Float64Array<ArrayBuffer>
/** A square of numbers, row by row. */
type Matrix = Row[]

export const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number)
  return sum
}

/** Indices of the most plentiful species whose formulas are independent. */
const chooseComponents = (formulas: readonly Float64Array[], moles: Float64Array): number[] => {
  const size = (formulas[0] as Float64Array).length
  const order = [...formulas.keys()].sort((i, j) => (moles[j] as number) - (moles[i] as number))
  const chosen: number[] = []
  const reduced: { row: Float64Array; pivot: number }[] = []
  for (const i of order) {
    const row = Float64Array.from(formulas[i] as Float64Array)
    for (const { row: other, pivot } of reduced) {
      const factor = (row[pivot] as number) / (other[pivot] as number)
      for (let j = 0; j < size; j++) row[j] = (row[j] as number) - factor * (other[j] as number)
    }
    let pivot = 0
    for (let j = 1; j < size; j++) if (Math.abs(row[j] as number) > Math.abs(row[pivot] as number)) pivot = j
    // Formulas are small whole numbers: what is left of a dependent one is rounding.
    if (Math.abs(row[pivot] as number) < 1e-9) continue
    reduced.push({ row, pivot })
    chosen.push(i)
    if (chosen.length === size) break
  }
  return chosen
}

/** Inverse by Gauss and Jordan with row pivots; the matrix is small and its entries are atom counts. */
const inverse = (matrix: readonly Float64Array[]): Matrix => {
  const size = matrix.length
  const work = matrix.map((row, i) => {
    const wide = new Float64Array(2 * size)
    wide.set(row)
    wide[size + i] = 1
    return wide
  })
  for (let column = 0; column < size; column++) {
    let best = column
    for (let i = column + 1; i < size; i++)
      if (Math.abs(work[i]?.[column] as number) > Math.abs(work[best]?.[column] as number)) best = i
    const pivotRow = work[best] as Row
    work[best] = work[column] as Row
    work[column] = pivotRow
    const pivot = pivotRow[column] as number
    for (let j = 0; j < 2 * size; j++) pivotRow[j] = (pivotRow[j] as number) / pivot
    for (const row of work) {
      if (row === pivotRow) continue
      const factor = row[column] as number
      if (factor === 0) continue
      for (let j = 0; j < 2 * size; j++) row[j] = (row[j] as number) - factor * (pivotRow[j] as number)
    }
  }
  return work.map((row) => row.slice(size))
}

/** Solver of a symmetric positive system by Cholesky after scaling its diagonal to one; null when it is not positive. */
const positiveSolver = (matrix: Matrix): ((rightSide: Float64Array) => Float64Array) | null => {
  const size = matrix.length
  const scale = new Float64Array(size)
  for (let i = 0; i < size; i++) {
    const diagonal = matrix[i]?.[i] as number
    if (!(diagonal > 0 && diagonal < Number.POSITIVE_INFINITY)) return null
    scale[i] = 1 / Math.sqrt(diagonal)
  }
  const lower = matrix.map(() => new Float64Array(size))
  for (let i = 0; i < size; i++) {
    const row = lower[i] as Float64Array
    for (let j = 0; j <= i; j++) {
      let sum = (matrix[i]?.[j] as number) * (scale[i] as number) * (scale[j] as number)
      for (let k = 0; k < j; k++) sum -= (row[k] as number) * (lower[j]?.[k] as number)
      if (i === j && !(sum > 0)) return null
      row[j] = i === j ? Math.sqrt(sum) : sum / (lower[j]?.[j] as number)
    }
  }
  return (rightSide) => {
    const x = rightSide.map((value, i) => value * (scale[i] as number))
    for (let i = 0; i < size; i++) {
      for (let k = 0; k < i; k++) x[i] = (x[i] as number) - (lower[i]?.[k] as number) * (x[k] as number)
      x[i] = (x[i] as number) / (lower[i]?.[i] as number)
    }
    for (let i = size - 1; i >= 0; i--) {
      for (let k = i + 1; k < size; k++)
        x[i] = (x[i] as number) - (lower[k]?.[i] as number) * (x[k] as number)
      x[i] = (x[i] as number) / (lower[i]?.[i] as number)
    }
    return x.map((value, i) => value * (scale[i] as number))
  }
}

/** Null when the moles are no state at all: not finite, or some element all gone. */
export const linearise = (
  formulas: readonly Float64Array[],
  atoms: Float64Array,
  moles: Float64Array,
): Linearisation | null => {
  const size = atoms.length
  const chosen = chooseComponents(formulas, moles)
  if (chosen.length < size) return null
  const toElements = inverse(chosen.map((i) => formulas[i] as Float64Array))
  const column = (j: number): Float64Array => Float64Array.from(toElements, (row) => row[j] as number)
  const columns = toElements.map((_, j) => column(j))
  const supply = Float64Array.from(columns, (c) => dot(c, atoms))
  const makeup = formulas.map((formula) => Float64Array.from(columns, (c) => dot(c, formula)))
  const held = new Float64Array(size)
  const hessian = columns.map(() => new Float64Array(size))
  makeup.forEach((row, i) => {
    const n = moles[i] as number
    for (let j = 0; j < size; j++) {
      const share = n * (row[j] as number)
      held[j] = (held[j] as number) + share
      const target = hessian[j] as Float64Array
      for (let k = 0; k < size; k++) target[k] = (target[k] as number) + share * (row[k] as number)
    }
  })
  const solve = positiveSolver(hessian)
  return solve === null ? null : { supply, makeup, toElements, held, solve }
}
