/**
 * Anderson's acceleration of a repeated map x ← g(x): the next x is the mix of the last few g(x) whose residuals g(x) − x
 * cancel best, by least squares [bib:walker2011]. It turns a slow linear contraction into a fast one and calms swings; a
 * map that contracts quickly is left as it is.
 */
export interface Accelerator {
  /** Forgets what it has seen. */
  reset(): void
  /**
   * Takes x and g(x), returns the next x in `x`. Both have the size it was made for, components of like scale. `pace`
   * is the share of each residual that is followed, 1 for all of it.
   */
  next(x: Float64Array, gx: Float64Array, pace: number): void
}

/** Regularisation of the small least-squares problem, relative to its diagonal. */
const RIDGE = 1e-9

/**
 * An accelerator for vectors of `size` that mixes the last `depth` rounds; it keeps its arrays between rounds.
 */
export const createAccelerator = (size: number, depth: number): Accelerator => {
  /** Changes from one round to the next of the residual and of what is followed, the last `depth` of them in turn. */
  const residualChange = new Float64Array(depth * size)
  const imageChange = new Float64Array(depth * size)
  const residual = new Float64Array(size)
  const image = new Float64Array(size)
  /** Products of the residual changes with each other, kept, and the copy that elimination uses up. */
  const products = new Float64Array(depth * depth)
  const normal = new Float64Array(depth * depth)
  const weights = new Float64Array(depth)
  let seen = 0

  /** Solves the normal equations by elimination; they are symmetric and small. False when they are no use. */
  const solve = (n: number): boolean => {
    for (let i = 0; i < n; i++) {
      const d = normal[i * depth + i] as number
      if (!(d > 0)) return false
      normal[i * depth + i] = d * (1 + RIDGE)
    }
    for (let c = 0; c < n; c++) {
      const pivot = normal[c * depth + c] as number
      if (!(Math.abs(pivot) > 0)) return false
      for (let r = c + 1; r < n; r++) {
        const factor = (normal[r * depth + c] as number) / pivot
        for (let j = c; j < n; j++)
          normal[r * depth + j] =
            (normal[r * depth + j] as number) - factor * (normal[c * depth + j] as number)
        weights[r] = (weights[r] as number) - factor * (weights[c] as number)
      }
    }
    for (let r = n - 1; r >= 0; r--) {
      let sum = weights[r] as number
      for (let j = r + 1; j < n; j++) sum -= (normal[r * depth + j] as number) * (weights[j] as number)
      weights[r] = sum / (normal[r * depth + r] as number)
      if (!Number.isFinite(weights[r])) return false
    }
    return true
  }

  return {
    reset: () => {
      seen = 0
    },
    next: (x, gx, pace) => {
      const n = Math.min(seen, depth)
      const newest = n === 0 ? 0 : (seen - 1) % depth
      const start = newest * size
      for (let i = 0; i < size; i++) {
        const r = (gx[i] as number) - (x[i] as number)
        const followed = (x[i] as number) + pace * r
        residualChange[start + i] = r - (residual[i] as number)
        imageChange[start + i] = followed - (image[i] as number)
        residual[i] = r
        image[i] = followed
        x[i] = followed
      }
      seen += 1
      if (n === 0) return
      for (let a = 0; a < n; a++) {
        const at = a * size
        let withResidual = 0
        let withNewest = 0
        for (let i = 0; i < size; i++) {
          const change = residualChange[at + i] as number
          withResidual += change * (residual[i] as number)
          withNewest += change * (residualChange[start + i] as number)
        }
        weights[a] = withResidual
        products[a * depth + newest] = withNewest
        products[newest * depth + a] = withNewest
      }
      normal.set(products)
      if (!solve(n)) return
      for (let a = 0; a < n; a++) {
        const at = a * size
        const weight = weights[a] as number
        for (let i = 0; i < size; i++) x[i] = (x[i] as number) - weight * (imageChange[at + i] as number)
      }
    },
  }
}
