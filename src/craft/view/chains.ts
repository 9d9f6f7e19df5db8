import type { Edge, EdgeKind } from './edges.ts'

/** Edges that follow each other, as corners of the scene. */
export interface Chain {
  readonly kind: EdgeKind
  readonly corners: readonly number[]
}

/** Joins edges of one kind end to end, where just two of them meet. */
export const chainsOf = (edges: readonly Edge[]): readonly Chain[] => {
  const chains: Chain[] = []
  for (const kind of ['cut', 'silhouette', 'crease'] as const) {
    const own = edges.filter((edge) => edge.kind === kind)
    const at = new Map<number, number[]>()
    for (const [index, { from, to }] of own.entries())
      for (const corner of [from, to]) {
        const list = at.get(corner)
        if (list === undefined) at.set(corner, [index])
        else list.push(index)
      }
    const used = new Uint8Array(own.length)
    const follow = (start: number, first: number): number[] => {
      const corners = [start]
      let [corner, index] = [start, first]
      for (;;) {
        used[index] = 1
        const { from, to } = own[index] as Edge
        corner = corner === from ? to : from
        corners.push(corner)
        const next = at.get(corner)?.filter((other) => used[other] === 0) ?? []
        if (at.get(corner)?.length !== 2 || next.length !== 1) return corners
        index = next[0] as number
      }
    }
    // First what has an end, then what is closed.
    for (const [corner, list] of at)
      if (list.length !== 2)
        for (const index of list) if (used[index] === 0) chains.push({ kind, corners: follow(corner, index) })
    for (const [index, { from }] of own.entries())
      if (used[index] === 0) chains.push({ kind, corners: follow(from, index) })
  }
  return chains
}
