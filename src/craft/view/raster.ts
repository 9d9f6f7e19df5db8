import type { Scene } from './scene.ts'

/**
 * What lies nearest in every dot of a grid laid over the picture: a triangle, or nothing. Only what is asked of it is
 * rough; the lines that are tested against it are not.
 */
export interface Raster {
  readonly wide: number
  readonly high: number
  /** Dots in a millimetre [1/mm]. */
  readonly scale: number
  /** Of the first dot’s middle [mm]. */
  readonly left: number
  readonly bottom: number
  /** −1 where there is nothing. */
  readonly triangle: Int32Array
  /** Depth of every triangle’s plane, a + b x + c y with x, y in dots [mm]. */
  readonly planes: Float64Array
}

/** Dots left free all round. */
const MARGIN = 2

/** Nearest surfaces of a scene, `dots` along its longer side. Triangles that turn away hide nothing others do not. */
export const rasterOf = (scene: Scene, dots: number): Raster => {
  const { bounds, x, y, depth, triangles, faces } = scene
  const [width, height] = [bounds.right - bounds.left, bounds.top - bounds.bottom]
  const scale = dots / Math.max(width, height)
  const [wide, high] = [Math.ceil(width * scale) + 2 * MARGIN, Math.ceil(height * scale) + 2 * MARGIN]
  const left = bounds.left - MARGIN / scale
  const bottom = bounds.bottom - MARGIN / scale
  const nearest = new Float32Array(wide * high).fill(Infinity)
  const triangle = new Int32Array(wide * high).fill(-1)
  const planes = new Float64Array(3 * faces.length)
  for (let t = 0; t < faces.length; t += 1) {
    if (faces[t] === 0) continue
    const [i, j, k] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!]
    const [ax, ay, az] = [(x[i]! - left) * scale, (y[i]! - bottom) * scale, depth[i]!]
    const [bx, by, bz] = [(x[j]! - left) * scale, (y[j]! - bottom) * scale, depth[j]!]
    const [cx, cy, cz] = [(x[k]! - left) * scale, (y[k]! - bottom) * scale, depth[k]!]
    const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    if (!(area > 1e-9)) {
      // Seen edge-on: it covers no dot.
      planes[3 * t] = az
      continue
    }
    const slopeX = ((bz - az) * (cy - ay) - (cz - az) * (by - ay)) / area
    const slopeY = ((cz - az) * (bx - ax) - (bz - az) * (cx - ax)) / area
    const at0 = az - slopeX * ax - slopeY * ay
    planes[3 * t] = at0
    planes[3 * t + 1] = slopeX
    planes[3 * t + 2] = slopeY
    const low = Math.max(0, Math.ceil(Math.min(ay, by, cy)))
    const up = Math.min(high - 1, Math.floor(Math.max(ay, by, cy)))
    for (let row = low; row <= up; row += 1) {
      let [from, to] = [-Infinity, Infinity]
      // The outline runs anticlockwise: an edge that goes down bounds it on the left, one that goes up on the right.
      for (let edge = 0; edge < 3; edge += 1) {
        const [px, py, qx, qy] =
          edge === 0 ? [ax, ay, bx, by] : edge === 1 ? [bx, by, cx, cy] : [cx, cy, ax, ay]
        if (py === qy) continue
        const at = px + ((row - py) * (qx - px)) / (qy - py)
        if (qy < py) from = Math.max(from, at)
        else to = Math.min(to, at)
      }
      const first = Math.max(0, Math.ceil(from))
      const last = Math.min(wide - 1, Math.floor(to))
      const rowAt = row * wide
      const z0 = at0 + slopeY * row
      for (let column = first; column <= last; column += 1) {
        const z = z0 + slopeX * column
        if (z < nearest[rowAt + column]!) {
          nearest[rowAt + column] = z
          triangle[rowAt + column] = t
        }
      }
    }
  }
  return { wide, high, scale, left, bottom, triangle, planes }
}
