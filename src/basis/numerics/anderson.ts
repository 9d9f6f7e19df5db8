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
const RIDGE = 1e-13

export const createAccelerator = (size: number, depth: number): Accelerator => {
  const images = Array.from({ length: depth + 1 }, () => new Float64Array(size))
  const residuals = Array.from({ length: depth + 1 }, () => new Float64Array(size))
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
      const slot = seen % (depth + 1)
      const image = images[slot] as Float64Array
      const residual = residuals[slot] as Float64Array
      for (let i = 0; i < size; i++) {
        const r = (gx[i] as number) - (x[i] as number)
        residual[i] = r
        image[i] = (x[i] as number) + pace * r
      }
      const n = Math.min(seen, depth)
      seen += 1
      x.set(image)
      if (n === 0) return
      const earlier = (i: number): number => (seen - 2 - i + 2 * (depth + 1)) % (depth + 1)
      for (let a = 0; a < n; a++) {
        const ra = residuals[earlier(a)] as Float64Array
        let b0 = 0
        for (let i = 0; i < size; i++)
          b0 += ((residual[i] as number) - (ra[i] as number)) * (residual[i] as number)
        weights[a] = b0
        for (let b = 0; b <= a; b++) {
          const rb = residuals[earlier(b)] as Float64Array
          let sum = 0
          for (let i = 0; i < size; i++)
            sum +=
              ((residual[i] as number) - (ra[i] as number)) * ((residual[i] as number) - (rb[i] as number))
          normal[a * depth + b] = sum
          normal[b * depth + a] = sum
        }
      }
      if (!solve(n)) return
      for (let a = 0; a < n; a++) {
        const ga = images[earlier(a)] as Float64Array
        const weight = weights[a] as number
        for (let i = 0; i < size; i++)
          x[i] = (x[i] as number) - weight * ((image[i] as number) - (ga[i] as number))
      }
    },
  }
}
