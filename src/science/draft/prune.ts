import { OUTSIDE } from './network.ts'
import type { DraughtLink, DraughtPlan, PlanFailure, PlanOutcome, WallSide } from './plan.ts'

export const fail = (code: PlanFailure['code'], sentence: string): PlanOutcome => ({
  ok: false,
  reason: { code, sentence },
})

/** Leaves out spaces that the open air cannot reach; says so when the fuel is one of them. */
export const prune = ({ nodes, links, bed, walls }: DraughtPlan): PlanOutcome => {
  const reachable = new Set<number>()
  for (let grew = true; grew; ) {
    grew = false
    for (const { from, to } of links) {
      for (const [a, b] of [
        [from, to],
        [to, from],
      ] as const) {
        if ((a === OUTSIDE || reachable.has(a)) && b !== OUTSIDE && !reachable.has(b)) {
          reachable.add(b)
          grew = true
        }
      }
    }
  }
  const bedLinks = bed.segments.map((segment) => links[segment.link] as DraughtLink)
  const bedNodes = new Set(bedLinks.map((link) => link.from))
  const feeds = links.filter(
    (link) => link.kind === 'opening' && (bedNodes.has(link.to) || bedNodes.has(link.from)),
  )
  const lastBedLink = bedLinks[bedLinks.length - 1] as DraughtLink
  if (feeds.length === 0 || !bedLinks.every((link) => reachable.has(link.from)))
    return fail(
      'no air to the fuel',
      'No open hole leads air to the fuel: neither its floor nor the wall beside it has one.',
    )
  if (lastBedLink.to !== OUTSIDE && !reachable.has(lastBedLink.to))
    return fail('no way out', 'The gas over the fuel has no way out.')

  const newNode = new Map<number, number>([[OUTSIDE, OUTSIDE]])
  const keptNodes = nodes.filter((_, i) => {
    if (!reachable.has(i)) return false
    newNode.set(i, newNode.size - 1)
    return true
  })
  const newLink = new Map<number, number>()
  const keptLinks: DraughtLink[] = []
  for (const [i, link] of links.entries()) {
    const from = newNode.get(link.from)
    const to = newNode.get(link.to)
    if (from === undefined || to === undefined || from === to) continue
    newLink.set(i, keptLinks.push({ ...link, from, to }) - 1)
  }
  // A space without a way out holds dead gas; its wall is taken to look on the open air.
  const keptSide = (side: WallSide): WallSide => {
    if (side.kind === 'node') {
      const node = newNode.get(side.node)
      return node === undefined ? { kind: 'open air' } : { kind: 'node', node }
    }
    if (side.kind === 'gap') {
      const link = newLink.get(side.link)
      return link === undefined ? { kind: 'open air' } : { kind: 'gap', link }
    }
    return side
  }
  return {
    ok: true,
    plan: {
      walls: walls.map((wall) => ({
        ...wall,
        inside: keptSide(wall.inside),
        outside: keptSide(wall.outside),
      })),
      nodes: keptNodes,
      links: keptLinks,
      bed: {
        ...bed,
        segments: bed.segments.map((segment) => ({
          ...segment,
          link: newLink.get(segment.link) as number,
        })),
      },
    },
  }
}
