import type { Mesh } from '#craft/solid/mesh.ts'
import type { Body, Stuff } from './scene.ts'

/** Faces that meet at less than this are one round surface: facets of a can are far below it, its rims far above. */
const CREASE = Math.cos((30 * Math.PI) / 180)

/**
 * A mesh with a normal for every corner, round where it is round and sharp where it is sharp, and its sharp edges as lines.
 * Corners are told apart by their number: the mesh must be welded, as the solids of this house are.
 */
export const shaded = ({ name, positions, triangles }: Mesh, stuff: Stuff): Body => {
  const count = triangles.length / 3
  const faces = new Float32Array(3 * count)
  for (let f = 0; f < count; f += 1) {
    const [i, j, k] = [0, 1, 2].map((c) => 3 * (triangles[3 * f + c] as number)) as [number, number, number]
    const [ux, uy, uz] = [0, 1, 2].map((c) => positions[j + c]! - positions[i + c]!) as [
      number,
      number,
      number,
    ]
    const [vx, vy, vz] = [0, 1, 2].map((c) => positions[k + c]! - positions[i + c]!) as [
      number,
      number,
      number,
    ]
    // As long as twice the face is large, so that slivers do not bend what they touch.
    faces[3 * f] = uy * vz - uz * vy
    faces[3 * f + 1] = uz * vx - ux * vz
    faces[3 * f + 2] = ux * vy - uy * vx
  }
  const lengths = new Float32Array(count)
  for (let f = 0; f < count; f += 1)
    lengths[f] = Math.hypot(faces[3 * f]!, faces[3 * f + 1]!, faces[3 * f + 2]!)
  const along = (f: number, g: number): number =>
    lengths[f]! * lengths[g]! === 0
      ? 1
      : (faces[3 * f]! * faces[3 * g]! +
          faces[3 * f + 1]! * faces[3 * g + 1]! +
          faces[3 * f + 2]! * faces[3 * g + 2]!) /
        (lengths[f]! * lengths[g]!)

  // Faces round every corner, as one list and where each corner's begins.
  const corners = positions.length / 3
  const starts = new Uint32Array(corners + 1)
  for (const corner of triangles) starts[corner + 1]! += 1
  for (let c = 0; c < corners; c += 1) starts[c + 1]! += starts[c]!
  const around = new Uint32Array(triangles.length)
  const filled = starts.slice()
  for (let at = 0; at < triangles.length; at += 1) around[filled[triangles[at]!]!++] = Math.floor(at / 3)

  const flat = new Float32Array(9 * count)
  const normals = new Float32Array(9 * count)
  for (let at = 0; at < triangles.length; at += 1) {
    const [corner, face] = [triangles[at]!, Math.floor(at / 3)]
    let [x, y, z] = [0, 0, 0]
    for (let n = starts[corner]!; n < starts[corner + 1]!; n += 1) {
      const other = around[n]!
      if (along(face, other) < CREASE) continue
      x += faces[3 * other]!
      y += faces[3 * other + 1]!
      z += faces[3 * other + 2]!
    }
    const length = Math.hypot(x, y, z) || 1
    for (let c = 0; c < 3; c += 1) flat[3 * at + c] = positions[3 * corner + c]!
    normals[3 * at] = x / length
    normals[3 * at + 1] = y / length
    normals[3 * at + 2] = z / length
  }
  return { name, stuff, positions: flat, normals, edges: sharpEdges(positions, triangles, along) }
}

const sharpEdges = (
  positions: Float32Array,
  triangles: Uint32Array,
  along: (f: number, g: number) => number,
): Float32Array => {
  const corners = positions.length / 3
  const seen = new Map<number, number>()
  const lines: number[] = []
  const draw = (a: number, b: number): void => {
    for (const corner of [a, b]) for (let c = 0; c < 3; c += 1) lines.push(positions[3 * corner + c]!)
  }
  for (let at = 0; at < triangles.length; at += 1) {
    const face = Math.floor(at / 3)
    const [a, b] = [triangles[at]!, triangles[at % 3 === 2 ? at - 2 : at + 1]!]
    const key = Math.min(a, b) * corners + Math.max(a, b)
    const other = seen.get(key)
    if (other === undefined) seen.set(key, face)
    else {
      seen.delete(key)
      if (along(face, other) < CREASE) draw(a, b)
    }
  }
  return Float32Array.from(lines)
}
