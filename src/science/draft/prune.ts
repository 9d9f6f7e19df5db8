import { OUTSIDE } from './network.ts'
import type { DraughtLink, DraughtPlan, PlanFailure, PlanOutcome, WallSide } from './plan.ts'

/** A plan that there is not, with the sentence for the maker. */
export const fail = (code: PlanFailure['code'], sentence: string): PlanOutcome => ({
  ok: false,
  reason: { code, sentence },
})

/** Nodes that can be reached from the open air by steps that `mayEnter` allows. */
const reachedFrom = (
  links: readonly DraughtLink[],
  mayEnter: (node: number, link: DraughtLink) => boolean,
): ReadonlySet<number> => {
  const reached = new Set<number>([OUTSIDE])
  for (let grew = true; grew; ) {
    grew = false
    for (const link of links) {
      for (const [a, b] of [
        [link.from, link.to],
        [link.to, link.from],
      ] as const) {
        if (!reached.has(a) || reached.has(b) || !mayEnter(b, link)) continue
        reached.add(b)
        grew = true
      }
    }
  }
  return reached
}

/** Leaves out spaces that the open air cannot reach; says so when the fuel is one of them. */
export const prune = ({ nodes, links, bed, walls, hearth }: DraughtPlan): PlanOutcome => {
  const reachable = reachedFrom(links, () => true)
  // Air for the fuel does not come through the flame above it, nor through the fuel itself.
  const withAir = reachedFrom(links, (node, link) => link.kind !== 'bed' && nodes[node]?.space !== 'flame')
  const bedLinks = bed.segments.map((segment) => links[segment.link] as DraughtLink)
  if (!bedLinks.some((link) => withAir.has(link.from)))
    return fail(
      'no air to the fuel',
      'No open way leads air to the fuel: no hole in its floor or in the wall beside it has the open air behind it.',
    )
  const lastBedLink = bedLinks[bedLinks.length - 1] as DraughtLink
  const besideTheFuel = reachedFrom(links, (_, link) => link.kind !== 'bed')
  if (!besideTheFuel.has(lastBedLink.to)) return fail('no way out', 'The gas over the fuel has no way out.')

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
      hearth,
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
