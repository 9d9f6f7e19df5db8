import type { Mesh } from '../solid/mesh.ts'
import { type Axes, axesOf, type Camera, type Point3 } from './camera.ts'

/** All meshes of a picture as seen: one list of corners, one of triangles. */
export interface Scene {
  readonly axes: Axes
  readonly names: readonly string[]
  /** Of every corner: to the right, up, and away from the viewer [mm]. */
  readonly x: Float64Array
  readonly y: Float64Array
  readonly depth: Float64Array
  /** Corners of every triangle. */
  readonly triangles: Uint32Array
  /** Of every triangle, which mesh it belongs to. */
  readonly owner: Uint16Array
  /** Unit vectors out of every triangle, in the stove’s own axes; of one without area, zero. */
  readonly normals: Float32Array
  /** Whether a triangle turns its outside to the viewer. */
  readonly faces: Uint8Array
  /** Whether it lies in the plane the stove was cut by. */
  readonly isCut: Uint8Array
  /** Whether its outside looks at the axis: the inside of a can. */
  readonly looksIn: Uint8Array
  readonly bounds: {
    readonly left: number
    readonly right: number
    readonly bottom: number
    readonly top: number
  }
}

export interface SceneOptions {
  readonly camera: Camera
  /** Bearing of the half that was cut away, where the meshes were cut open [deg]. */
  readonly cutAway?: number | undefined
}

interface Counts {
  readonly corners: number
  readonly triangles: number
}

const countsOf = (meshes: readonly Mesh[]): Counts => ({
  corners: meshes.reduce((sum, { positions }) => sum + positions.length / 3, 0),
  triangles: meshes.reduce((sum, { triangles }) => sum + triangles.length / 3, 0),
})

/** In the cut plane to this accuracy [mm]. */
const IN_PLANE = 1e-3

/** Meshes [mm] turned before the camera, cut open where asked. */
export const sceneOf = (meshes: readonly Mesh[], { camera, cutAway }: SceneOptions): Scene => {
  const axes = axesOf(camera)
  const { corners, triangles: count } = countsOf(meshes)
  const [x, y, depth] = [new Float64Array(corners), new Float64Array(corners), new Float64Array(corners)]
  const triangles = new Uint32Array(3 * count)
  const owner = new Uint16Array(count)
  const normals = new Float32Array(3 * count)
  const [faces, isCut, looksIn] = [new Uint8Array(count), new Uint8Array(count), new Uint8Array(count)]
  const bounds = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity }
  const angle = ((cutAway ?? 0) * Math.PI) / 180
  const plane: Point3 | null = cutAway === undefined ? null : [Math.sin(angle), Math.cos(angle), 0]
  let [corner, triangle] = [0, 0]
  for (const [index, mesh] of meshes.entries()) {
    const { positions: p } = mesh
    for (let at = 0; at < p.length; at += 3) {
      const [px, py, pz] = [p[at]!, p[at + 1]!, p[at + 2]!]
      const n = corner + at / 3
      x[n] = axes.right[0] * px + axes.right[1] * py + axes.right[2] * pz
      y[n] = axes.up[0] * px + axes.up[1] * py + axes.up[2] * pz
      depth[n] = -(axes.near[0] * px + axes.near[1] * py + axes.near[2] * pz)
      bounds.left = Math.min(bounds.left, x[n]!)
      bounds.right = Math.max(bounds.right, x[n]!)
      bounds.bottom = Math.min(bounds.bottom, y[n]!)
      bounds.top = Math.max(bounds.top, y[n]!)
    }
    for (let at = 0; at < mesh.triangles.length; at += 3, triangle += 1) {
      const [a, b, c] = [mesh.triangles[at]!, mesh.triangles[at + 1]!, mesh.triangles[at + 2]!]
      triangles[3 * triangle] = corner + a
      triangles[3 * triangle + 1] = corner + b
      triangles[3 * triangle + 2] = corner + c
      owner[triangle] = index
      const [i, j, k] = [3 * a, 3 * b, 3 * c]
      const [ux, uy, uz] = [p[j]! - p[i]!, p[j + 1]! - p[i + 1]!, p[j + 2]! - p[i + 2]!]
      const [vx, vy, vz] = [p[k]! - p[i]!, p[k + 1]! - p[i + 1]!, p[k + 2]! - p[i + 2]!]
      const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx]
      const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1
      normals[3 * triangle] = nx / length
      normals[3 * triangle + 1] = ny / length
      normals[3 * triangle + 2] = nz / length
      faces[triangle] = nx * axes.near[0] + ny * axes.near[1] + nz * axes.near[2] > 0 ? 1 : 0
      const inwards = -(nx * p[i]! + ny * p[i + 1]!)
      looksIn[triangle] =
        inwards > 0 && inwards > 0.3 * length * Math.sqrt(p[i]! * p[i]! + p[i + 1]! * p[i + 1]!) ? 1 : 0
      if (plane !== null) {
        const off = (m: number): number => Math.abs(plane[0] * p[m]! + plane[1] * p[m + 1]!)
        isCut[triangle] = off(i) < IN_PLANE && off(j) < IN_PLANE && off(k) < IN_PLANE ? 1 : 0
      }
    }
    corner += p.length / 3
  }
  const names = meshes.map(({ name }) => name)
  return { axes, names, x, y, depth, triangles, owner, normals, faces, isCut, looksIn, bounds }
}
