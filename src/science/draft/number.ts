import type { PlacedPart } from '#stove/assembly/place.ts'
import type { Chamber, ChamberMap } from './chambers.ts'
import { OUTSIDE } from './network.ts'
import type { Draft } from './passages.ts'
import type { BedPlace, DraughtLink, DraughtNode } from './plan.ts'
import { duct } from './resistance.ts'
import { chamberArea, chamberName } from './spaces.ts'

/** Heights that belong to one node of a gap [m]. */
const SAME_NODE = 1e-3

/** The network before spaces out of reach are left out. */
export interface Numbered {
  readonly nodes: readonly DraughtNode[]
  readonly links: readonly DraughtLink[]
  readonly bed: BedPlace
  /** Nodes of each space, lowest first. */
  readonly nodesOf: ReadonlyMap<
    Chamber | 'bed',
    readonly { readonly height: number; readonly node: number }[]
  >
}

/** Gives chambers and the bed their node numbers and ties gaps and bed together. */
export const number = (
  drafts: readonly Draft[],
  map: ChamberMap,
  fuelCan: PlacedPart,
  bedSize: Pick<BedPlace, 'base' | 'depth' | 'area'>,
): Numbered => {
  const nodes: DraughtNode[] = []
  const links: DraughtLink[] = []
  const heightsIn = new Map<Chamber | 'bed', number[]>()
  for (const { from, to, link } of drafts)
    for (const end of [from, to])
      if (end !== null) heightsIn.set(end, [...(heightsIn.get(end) ?? []), link.height])

  /** Nodes of a space, lowest first. */
  const nodesOf = new Map<Chamber | 'bed', { readonly height: number; readonly node: number }[]>()
  const addNode = (node: DraughtNode): number => nodes.push(node) - 1

  const levels = (heights: readonly number[]): number[] => {
    const sorted = [...heights].sort((a, b) => a - b)
    return sorted.filter((h, i) => i === 0 || h - (sorted[i - 1] as number) > SAME_NODE)
  }

  for (const chamber of map.chambers) {
    const heights = heightsIn.get(chamber)
    if (heights === undefined) continue
    const area = chamberArea(chamber)
    const aboveFuel = chamber.bottom >= bedSize.base + bedSize.depth - 1e-4
    const space = chamber.innerRadius === 0 && aboveFuel ? 'flame' : 'air'
    const name = chamberName(chamber, fuelCan)
    if (chamber.innerRadius === 0) {
      nodesOf.set(chamber, [
        { height: chamber.bottom, node: addNode({ name, space, height: chamber.bottom, area }) },
      ])
      continue
    }
    // A ring gap is narrow: friction along it counts, so every height where air comes or goes is a node.
    const chain = levels(heights).map((height) => ({
      height,
      node: addNode({ name: `${name}, ${Math.round(height * 1000)} mm up`, space, height, area }),
    }))
    nodesOf.set(chamber, chain)
    for (let i = 0; i + 1 < chain.length; i++) {
      const low = chain[i] as { height: number; node: number }
      const high = chain[i + 1] as { height: number; node: number }
      const length = high.height - low.height
      links.push({
        kind: 'gap',
        name,
        part: chamber.within,
        opening: null,
        duty: null,
        from: low.node,
        to: high.node,
        height: low.height,
        area,
        hydraulicDiameter: 2 * (chamber.outerRadius - chamber.innerRadius),
        count: 1,
        shape: duct(chamber.innerRadius, chamber.outerRadius, length),
        length,
        exposure: null,
      })
    }
  }

  // The bed: a node at the floor and one at each row of holes in its wall; the flame space above is its top.
  const top = bedSize.base + bedSize.depth
  const flame = map.chambers.find(
    (chamber) => chamber.innerRadius === 0 && chamber.bottom <= top + 1e-4 && chamber.top > top + 1e-4,
  )
  // Under a whole lid without a hole it is a space all the same, one without a way out.
  if (flame !== undefined && !nodesOf.has(flame)) {
    const { bottom: height } = flame
    const node = addNode({
      name: chamberName(flame, fuelCan),
      space: 'flame',
      height,
      area: chamberArea(flame),
    })
    nodesOf.set(flame, [{ height, node }])
  }
  const bedHeights = levels([bedSize.base, ...(heightsIn.get('bed') ?? [])])
  const bedNodes = bedHeights.map((height) => ({
    height,
    node: addNode({ name: 'fuel bed', space: 'bed', height, area: bedSize.area }),
  }))
  nodesOf.set('bed', bedNodes)
  const flameNode = flame === undefined ? OUTSIDE : ((nodesOf.get(flame)?.[0]?.node ?? OUTSIDE) as number)

  const nearest = (space: Chamber | 'bed' | null, height: number): number => {
    if (space === null) return OUTSIDE
    let best = OUTSIDE
    let distance = Number.POSITIVE_INFINITY
    for (const { height: h, node } of nodesOf.get(space) ?? []) {
      if (Math.abs(h - height) < distance) {
        distance = Math.abs(h - height)
        best = node
      }
    }
    return best
  }
  for (const { from, to, link } of drafts)
    links.push({ ...link, from: nearest(from, link.height), to: nearest(to, link.height) })

  const segments: { link: number; from: number; to: number }[] = []
  for (const [i, { height, node }] of bedNodes.entries()) {
    const next = bedNodes[i + 1]
    const upTo = next?.height ?? top
    const index =
      links.push({
        kind: 'bed',
        name: 'fuel bed',
        part: fuelCan.name,
        opening: null,
        duty: null,
        from: node,
        to: next?.node ?? flameNode,
        height,
        area: bedSize.area,
        hydraulicDiameter: 0,
        count: 1,
        shape: { viscous: 0, inertial: 0 },
        length: upTo - height,
        exposure: (next?.node ?? flameNode) === OUTSIDE ? { kind: 'top' } : null,
      }) - 1
    segments.push({ link: index, from: height - bedSize.base, to: upTo - bedSize.base })
  }
  return { nodes, links, bed: { part: fuelCan.name, ...bedSize, segments }, nodesOf }
}
