import { dot, type Point3 } from './camera.ts'
import type { Raster } from './raster.ts'
import type { Labels } from './regions.ts'
import type { Scene } from './scene.ts'

/** Steps of shade, the darkest first. */
export const TONES = 12

/** The tin that was cut has a tone of its own, after the others. */
export const CUT_TONE = TONES

/** Light comes over the viewer’s left shoulder: shares of right, up and towards the viewer. A matter of looks. */
const LIGHT = { right: -0.5, up: 0.55, near: 0.67 }

/** The inside of a can gets this share of the light [1]. */
const INSIDE = 0.72
/** Light from everywhere [1]. */
const AMBIENT = 0.12

const toneOf = (scene: Scene, light: Point3, triangle: number): number => {
  if (scene.isCut[triangle] === 1) return CUT_TONE
  const at = 3 * triangle
  const normal: Point3 = [scene.normals[at]!, scene.normals[at + 1]!, scene.normals[at + 2]!]
  const lit = AMBIENT + (1 - AMBIENT) * Math.max(0, dot(normal, light))
  const share = scene.looksIn[triangle] === 1 ? INSIDE * lit : lit
  return Math.max(0, Math.min(TONES - 1, Math.floor(share * TONES)))
}

/** Tones to a mesh: those of light, and that of a cut. */
export const TONES_A_MESH = TONES + 1

/**
 * Mesh and tone of every other dot of a raster, each way: 1 + mesh · tones + tone. Half as fine is fine enough for
 * shades, whose borders lines cover.
 */
export const tonesOf = (scene: Scene, { wide, high, triangle }: Raster): Labels => {
  const { right, up, near } = scene.axes
  const mix = (axis: 0 | 1 | 2): number =>
    LIGHT.right * right[axis] + LIGHT.up * up[axis] + LIGHT.near * near[axis]
  const light: Point3 = [mix(0), mix(1), mix(2)]
  const ofTriangle = new Int16Array(scene.faces.length).fill(-1)
  const [columns, rows] = [Math.floor(wide / 2), Math.floor(high / 2)]
  const label = new Uint16Array(columns * rows)
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const t = triangle[2 * row * wide + 2 * column]!
      if (t === -1) continue
      if (ofTriangle[t] === -1) ofTriangle[t] = toneOf(scene, light, t)
      label[row * columns + column] = 1 + scene.owner[t]! * TONES_A_MESH + ofTriangle[t]!
    }
  return { wide: columns, high: rows, label }
}
