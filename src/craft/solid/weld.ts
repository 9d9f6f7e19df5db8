import type { Mesh } from './mesh.ts'

/** Corners nearer than this become one [mm]: a 32-bit number hardly tells them apart, and readers of meshes do not. */
const SAME_PLACE = 1e-4

const isShort = (positions: Float32Array, a: number, b: number): boolean => {
  const [p, q] = [3 * a, 3 * b]
  const [dx, dy, dz] = [
    positions[p]! - positions[q]!,
    positions[p + 1]! - positions[q + 1]!,
    positions[p + 2]! - positions[q + 2]!,
  ]
  return dx * dx + dy * dy + dz * dz < SAME_PLACE ** 2
}

/** Every edge once each way, and none that ends where it starts. */
const isClosed = ({ triangles }: Mesh): boolean => {
  const seen = new Set<number>()
  const key = (a: number, b: number): number => a * 2 ** 26 + b
  for (let at = 0; at < triangles.length; at += 3)
    for (let corner = 0; corner < 3; corner += 1) {
      const from = triangles[at + corner] as number
      const to = triangles[at + ((corner + 1) % 3)] as number
      const edge = key(from, to)
      if (from === to || seen.has(edge)) return false
      seen.add(edge)
    }
  for (let at = 0; at < triangles.length; at += 3)
    for (let corner = 0; corner < 3; corner += 1)
      if (!seen.has(key(triangles[at + ((corner + 1) % 3)] as number, triangles[at + corner] as number)))
        return false
  return true
}

/**
 * A mesh without edges that are too short to see. Such edges come up where three cuts all but meet. One whose drawing
 * together would open the mesh stays as it is.
 */
export const welded = (mesh: Mesh): Mesh => {
  const { positions, triangles } = mesh
  const joined = new Map<number, number>()
  const rootOf = (corner: number): number => {
    let root = corner
    while (joined.has(root)) root = joined.get(root) as number
    return root
  }
  for (let at = 0; at < triangles.length; at += 3)
    for (let corner = 0; corner < 3; corner += 1) {
      const a = triangles[at + corner] as number
      const b = triangles[at + ((corner + 1) % 3)] as number
      if (a >= b || !isShort(positions, a, b)) continue
      const [low, high] = [rootOf(a), rootOf(b)].sort((one, other) => one - other) as [number, number]
      if (low !== high) joined.set(high, low)
    }
  if (joined.size === 0) return mesh
  const kept: number[] = []
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [0, 1, 2].map((corner) => rootOf(triangles[at + corner] as number)) as [
      number,
      number,
      number,
    ]
    if (a !== b && b !== c && c !== a) kept.push(a, b, c)
  }
  const corners = [...new Set(kept)].sort((one, other) => one - other)
  const place = new Map(corners.map((corner, index) => [corner, index]))
  const result: Mesh = {
    name: mesh.name,
    positions: Float32Array.from(
      corners.flatMap((corner) => [...positions.subarray(3 * corner, 3 * corner + 3)]),
    ),
    triangles: Uint32Array.from(kept, (corner) => place.get(corner) as number),
  }
  return isClosed(result) ? result : mesh
}
