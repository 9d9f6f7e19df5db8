import type { Profile } from '#stove/assembly/profile.ts'
import type { Chamber, ChamberMap } from './chambers.ts'
import type { Numbered } from './number.ts'
import type { WallSide, WallStretch } from './plan.ts'

/** Stretches shorter than this carry no heat worth speaking of [m]. */
const SHORTEST = 5e-4

const sameSide = (a: WallSide, b: WallSide): boolean =>
  a.kind === b.kind &&
  (a.kind !== 'node' || (b.kind === 'node' && a.node === b.node)) &&
  (a.kind !== 'gap' || (b.kind === 'gap' && a.link === b.link))

/** Cuts every can's wall where the space on either side of it changes. */
export const wallStretches = (
  profile: Profile,
  map: ChamberMap,
  { nodes, links, bed, nodesOf }: Numbered,
  isBed: (chamber: Chamber | null) => boolean,
): readonly WallStretch[] => {
  const cuts = [
    ...map.chambers.flatMap(({ bottom, top }) => [bottom, top]),
    ...nodes.map(({ height }) => height),
    bed.base,
    bed.base + bed.depth,
  ]

  const sideOf = (chamber: Chamber | null, height: number): WallSide => {
    if (chamber === null) return { kind: 'open air' }
    if (isBed(chamber)) return { kind: 'bed' }
    const own = nodesOf.get(chamber)
    if (own === undefined) return { kind: 'open air' }
    const mine = new Set(own.map(({ node }) => node))
    const link = links.findIndex(
      (candidate) =>
        candidate.kind === 'gap' &&
        mine.has(candidate.from) &&
        height >= candidate.height &&
        height <= candidate.height + candidate.length,
    )
    if (link >= 0) return { kind: 'gap', link }
    const [nearest] = [...own].sort((a, b) => Math.abs(a.height - height) - Math.abs(b.height - height))
    return nearest === undefined ? { kind: 'open air' } : { kind: 'node', node: nearest.node }
  }

  return profile.walls.flatMap((wall) => {
    const heights = [...new Set([wall.bottom, ...cuts, wall.top])]
      .filter((height) => height >= wall.bottom && height <= wall.top)
      .sort((a, b) => a - b)
    const stretches: WallStretch[] = []
    for (let i = 0; i + 1 < heights.length; i++) {
      const bottom = heights[i] as number
      const top = heights[i + 1] as number
      if (top - bottom < SHORTEST) continue
      const middle = (bottom + top) / 2
      const inside = sideOf(map.beside(wall.part, middle, 'inside'), middle)
      const outside = sideOf(map.beside(wall.part, middle, 'outside'), middle)
      const last = stretches[stretches.length - 1]
      if (last !== undefined && sameSide(last.inside, inside) && sameSide(last.outside, outside))
        stretches[stretches.length - 1] = { ...last, top }
      else
        stretches.push({
          part: wall.part,
          bottom,
          top,
          radius: wall.outerRadius,
          thickness: wall.outerRadius - wall.innerRadius,
          inside,
          outside,
        })
    }
    return stretches
  })
}
