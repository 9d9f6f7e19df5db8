import type { Mesh } from '#craft/solid/mesh.ts'

/** Edges that are not met exactly once each way, and triangles with a corner twice: none for a closed surface. */
export const openEdges = ({ triangles }: Mesh): number => {
  const balance = new Map<string, number>()
  let twice = 0
  for (let at = 0; at < triangles.length; at += 3) {
    const corners = [...triangles.subarray(at, at + 3)] as [number, number, number]
    if (new Set(corners).size < 3) twice += 1
    for (const [k, from] of corners.entries()) {
      const to = corners[(k + 1) % 3] as number
      const key = `${from}>${to}`
      balance.set(key, (balance.get(key) ?? 0) + 1)
    }
  }
  let open = twice
  for (const [key, count] of balance) {
    const [from, to] = key.split('>')
    if (count !== 1 || balance.get(`${to}>${from}`) !== 1) open += 1
  }
  return open
}

/** Into how many pieces a mesh falls. */
export const pieces = ({ positions, triangles }: Mesh): number => {
  const parent = Array.from({ length: positions.length / 3 }, (_, corner) => corner)
  const root = (corner: number): number => {
    let at = corner
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number
      at = parent[at] as number
    }
    return at
  }
  for (let at = 0; at < triangles.length; at += 3)
    for (const other of [1, 2]) parent[root(triangles[at + other] as number)] = root(triangles[at] as number)
  return new Set([...triangles].map(root)).size
}
