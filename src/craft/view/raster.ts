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
    const i = triangles[3 * t]!
    const j = triangles[3 * t + 1]!
    const k = triangles[3 * t + 2]!
    const ax = (x[i]! - left) * scale
    const ay = (y[i]! - bottom) * scale
    const az = depth[i]!
    const bx = (x[j]! - left) * scale
    const by = (y[j]! - bottom) * scale
    const bz = depth[j]!
    const cx = (x[k]! - left) * scale
    const cy = (y[k]! - bottom) * scale
    const cz = depth[k]!
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
    // Where each side meets a row, as x = start + row · step. The outline runs anticlockwise: a side that goes down
    // bounds it on the left, one that goes up on the right, and a level one not at all.
    const stepA = by === ay ? 0 : (bx - ax) / (by - ay)
    const stepB = cy === by ? 0 : (cx - bx) / (cy - by)
    const stepC = ay === cy ? 0 : (ax - cx) / (ay - cy)
    const startA = ax - ay * stepA
    const startB = bx - by * stepB
    const startC = cx - cy * stepC
    const low = Math.max(0, Math.ceil(Math.min(ay, by, cy)))
    const up = Math.min(high - 1, Math.floor(Math.max(ay, by, cy)))
    for (let row = low; row <= up; row += 1) {
      let from = 0
      let to = wide - 1
      const sideA = startA + row * stepA
      const sideB = startB + row * stepB
      const sideC = startC + row * stepC
      if (by < ay) from = Math.max(sideA, from)
      else if (by > ay) to = Math.min(sideA, to)
      if (cy < by) from = Math.max(sideB, from)
      else if (cy > by) to = Math.min(sideB, to)
      if (ay < cy) from = Math.max(sideC, from)
      else if (ay > cy) to = Math.min(sideC, to)
      const rowAt = row * wide
      const last = rowAt + Math.floor(to)
      const first = rowAt + Math.ceil(from)
      let z = at0 + slopeY * row + slopeX * (first - rowAt)
      for (let dot = first; dot <= last; dot += 1, z += slopeX)
        if (z < nearest[dot]!) {
          nearest[dot] = z
          triangle[dot] = t
        }
    }
  }
  return { wide, high, scale, left, bottom, triangle, planes }
}
