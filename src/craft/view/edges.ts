import type { Scene } from './scene.ts'

/** Why an edge is drawn. */
export type EdgeKind = 'silhouette' | 'crease' | 'cut'

/** An edge of a scene that may show as a line. */
export interface Edge {
  readonly from: number
  readonly to: number
  readonly kind: EdgeKind
}

/** Faces that meet at less than this make one smooth surface: facets of the smallest holes turn by 15°, the crests of beads by 30° [deg]. */
const SMOOTH = 25

const COS_SMOOTH = Math.cos((SMOOTH * Math.PI) / 180)

const MULTIPLIER = 0x9e3779b1

/** Of every side of every triangle, the triangle on its other side; −1 where there is none. */
const neighbours = ({ triangles, x }: Scene): Int32Array => {
  const sides = triangles.length
  const found = new Int32Array(sides).fill(-1)
  let size = 1024
  while (size < 2 * sides) size *= 2
  const table = new Int32Array(size).fill(-1)
  const mask = size - 1
  const ends = (side: number): [number, number] => {
    const first = side - (side % 3)
    return [triangles[side]!, triangles[first + ((side + 1) % 3)]!]
  }
  const corners = x.length
  for (let side = 0; side < sides; side += 1) {
    const [a, b] = ends(side)
    const [low, high] = a < b ? [a, b] : [b, a]
    let slot = (Math.imul(low, MULTIPLIER) ^ Math.imul(high + corners, 0x85ebca6b)) & mask
    for (;;) {
      const other = table[slot]!
      if (other === -1) {
        table[slot] = side
        break
      }
      const [c, d] = ends(other)
      if (c === b && d === a) {
        found[side] = (other - (other % 3)) / 3
        found[other] = (side - (side % 3)) / 3
        break
      }
      slot = (slot + 1) & mask
    }
  }
  return found
}

/** Edges that can be seen as lines: outlines, sharp edges, and the edges of what was cut. */
export const edgesOf = (scene: Scene): readonly Edge[] => {
  const { triangles, faces, normals, isCut } = scene
  const across = neighbours(scene)
  const edges: Edge[] = []
  for (let side = 0; side < across.length; side += 1) {
    const here = (side - (side % 3)) / 3
    const there = across[side]!
    // Once an edge: from the side of the lower triangle.
    if (there === -1 || there < here || (faces[here] === 0 && faces[there] === 0)) continue
    const from = triangles[side]!
    const to = triangles[3 * here + ((side + 1) % 3)]!
    if (isCut[here] !== isCut[there]) edges.push({ from, to, kind: 'cut' })
    else if (faces[here] !== faces[there]) edges.push({ from, to, kind: 'silhouette' })
    else {
      const [m, n] = [3 * here, 3 * there]
      const cos =
        normals[m]! * normals[n]! + normals[m + 1]! * normals[n + 1]! + normals[m + 2]! * normals[n + 2]!
      if (cos < COS_SMOOTH) edges.push({ from, to, kind: 'crease' })
    }
  }
  return edges
}
