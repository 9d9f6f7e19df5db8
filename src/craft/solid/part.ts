import { toMillimetres } from '#basis/units.ts'
import type { Face, Opening, Part } from '#stove/model.ts'
import { faceCutters, SECTOR_STEP, wallCutters } from './cutters.ts'
import { type FacetOptions, facetShare, facetsRound } from './facets.ts'
import { type Own, type Solid, type SolidKernel, withSolids } from './kernel.ts'
import type { Mesh } from './mesh.ts'
import { meshFrom } from './meshFrom.ts'
import { canProfile, discProfile, type ProfileRing } from './profile.ts'
import { revolved } from './revolve.ts'
import { bentVanes } from './vanes.ts'
import { coveredArea, faceCircles, profileVolume, vanesLoss, wallCutVolume } from './volume.ts'
import { type WallCut, wallCuts } from './wallCut.ts'

/** A part as a closed solid, in its own frame: bottom edge at height 0 as it stands, front mark towards +y. */
export interface PartSolid {
  readonly name: string
  readonly part: Part
  readonly mesh: Mesh
  /** Facets all the way round [1]. */
  readonly facetsRound: number
  /** Half section before anything was cut [mm]. */
  readonly rings: readonly ProfileRing[]
  /** Of the figure with true curves, worked out from the stove and not from the mesh [mm³]. */
  readonly volume: number
  /** How far flat facets may bring the mesh's own volume away from that [mm³]. */
  readonly volumeError: number
}

export interface PartSolidOptions {
  readonly facets: FacetOptions
  /** Facets all the way round; the same for all parts of a stove, so that what touches does not cut [1]. */
  readonly facetsRound: number
  /** Inside radius of a band: the can's it goes round [mm]. */
  readonly bandRadius: number
}

/** A drill that comes through the wall goes this far on before it is stopped [mm]. */
const DRILL_BEYOND = 0.5

/** Any part as rings of revolution; `bandRadius` is the inside of a band [mm]. */
export const partRings = (part: Part, bandRadius: number): readonly ProfileRing[] => {
  switch (part.form) {
    case 'can':
      return canProfile(part.can)
    case 'disc':
      return discProfile(part)
    case 'band': {
      const outer = bandRadius + toMillimetres(part.thickness)
      return [{ what: 'band', inner: bandRadius, outer, from: 0, to: toMillimetres(part.height) }]
    }
  }
}

/** Where an opening of a face lies: the tin of that face. */
const faceRing = (rings: readonly ProfileRing[], face: Face): ProfileRing | undefined => {
  const flat = rings.filter(({ what }) => what === 'panel' || what === 'ledge' || what === 'disc')
  const middle = (Math.min(...rings.map(({ from }) => from)) + Math.max(...rings.map(({ to }) => to))) / 2
  if (face === 'face') return flat[0]
  return flat.find(({ from }) => (face === 'bottom' ? from < middle : from >= middle))
}

interface FaceWork {
  readonly ring: ProfileRing
  readonly openings: readonly Opening[]
}

const faceWork = (part: Part, rings: readonly ProfileRing[]): readonly FaceWork[] =>
  (['bottom', 'top', 'face'] as const).flatMap((face) => {
    const openings = [...part.openings.values()].filter(
      (opening) => opening.kind !== 'row' && opening.face === face,
    )
    const ring = openings.length === 0 ? undefined : faceRing(rings, face)
    return ring === undefined ? [] : [{ ring, openings }]
  })

/** Corners nearer together than this are one [mm]: joined outlines bring pairs that a 32-bit number cannot tell apart. */
const SAME_CORNER = 1e-4

const withoutTwins = (
  outline: readonly (readonly [number, number])[],
): readonly (readonly [number, number])[] =>
  outline.filter((corner, index) => {
    const before = outline[(index + outline.length - 1) % outline.length] as readonly [number, number]
    return Math.hypot(corner[0] - before[0], corner[1] - before[1]) > SAME_CORNER
  })

const blankOf = (kernel: SolidKernel, own: Own, rings: readonly ProfileRing[], facets: number): Solid => {
  const quads = rings.map(({ inner, outer, from, to, drawnIn: [low, high] = [0, 0] }): [number, number][] => [
    [inner - low, from],
    [outer - low, from],
    [outer - high, to],
    [inner - high, to],
  ])
  const outlines = own(kernel.CrossSection.union(quads)).toPolygons()
  return revolved(kernel, own, outlines.map(withoutTwins), facets)
}

/** Where the wall is marked out, how far in it is cut, and how far out: radii [mm]. */
const wallReach = (rings: readonly ProfileRing[]) => {
  const walls = rings.filter(({ what }) => what === 'wall' || what === 'band')
  const beads = Math.max(0, ...walls.flatMap(({ drawnIn = [0, 0] }) => drawnIn))
  const chuck = Math.max(
    0,
    ...rings.filter(({ what }) => what === 'chuck wall').map(({ inner, outer }) => outer - inner),
  )
  return {
    marked: walls[0]?.outer ?? 0,
    beyond: (walls[0]?.inner ?? 0) - chuck - beads - DRILL_BEYOND,
    outer: Math.max(...rings.map(({ outer }) => outer)),
  }
}

interface Cutting {
  readonly rings: readonly ProfileRing[]
  readonly faces: readonly FaceWork[]
  readonly cuts: readonly WallCut[]
  readonly reach: ReturnType<typeof wallReach>
}

/** Shorter edges are drawn together [mm]: where a hole just misses a facet's edge, slivers would be left. */
const SHORTEST_EDGE = 1e-3

const solidOf = (
  kernel: SolidKernel,
  own: Own,
  { rings, faces, cuts, reach }: Cutting,
  options: PartSolidOptions,
): Solid => {
  const blank = blankOf(kernel, own, rings, options.facetsRound)
  const vanes = faces.flatMap(({ ring, openings }) =>
    openings.flatMap((opening) =>
      opening.kind === 'vanes' ? [bentVanes(kernel, own, opening, ring.from, ring.to)] : [],
    ),
  )
  const cutters = [
    ...wallCutters(kernel, own, cuts, reach.beyond, reach.outer, options.facets),
    ...faces.flatMap(({ ring, openings }) =>
      faceCutters(kernel, own, openings, ring.from, ring.to, options.facets),
    ),
    ...vanes.flatMap(({ cut }) => cut),
  ]
  const cut = cutters.length === 0 ? blank : own(kernel.Manifold.difference([blank, ...cutters]))
  const tongues = vanes.flatMap(({ tongues }) => tongues)
  const whole = tongues.length === 0 ? cut : own(kernel.Manifold.union([cut, ...tongues]))
  return own(whole.simplify(SHORTEST_EDGE))
}

/** Corners are 32-bit numbers: of 0.15 mm of wall 100 mm from the axis, this share is lost to rounding [1]. */
const ROUNDING = 1e-4

/** Tin that is cut away, and how much of it the polygons of the holes leave standing [mm³]. */
interface CutAway {
  readonly volume: number
  readonly left: number
}

const wallCutAway = ({ rings, cuts, reach }: Cutting, facets: FacetOptions): CutAway => {
  const volume = wallCutVolume(rings, cuts, Math.max(0, reach.beyond))
  const losses = cuts.map((cut) =>
    cut.kind === 'straight' ? 1 - facetShare(facetsRound(cut.radius, facets)) : 0,
  )
  return { volume, left: volume * Math.max(0, ...losses) }
}

const faceCutAway = ({ faces }: Cutting, facets: FacetOptions): CutAway => {
  let [volume, left] = [0, 0]
  for (const { ring, openings } of faces) {
    const tin = ring.to - ring.from
    const circles = faceCircles(openings)
    volume += coveredArea(circles) * tin
    for (const { radius } of circles)
      left += Math.PI * radius ** 2 * tin * (1 - facetShare(facetsRound(radius, facets)))
    for (const opening of openings) if (opening.kind === 'vanes') volume += vanesLoss(opening, tin)
  }
  return { volume, left }
}

/**
 * Tin of a panel's edge that a hole beside it may take more or less than worked out, where the end of its cutter,
 * which is not round, meets the panel [mm³].
 */
const nicked = ({ rings, cuts, reach }: Cutting): number =>
  rings
    .filter(({ what }) => what === 'panel' || what === 'ledge')
    .reduce((sum, { from, to }) => {
      const meeting = cuts.filter(({ bottom, top }) => bottom < to && top > from)
      return meeting.reduce((more, cut) => {
        const { beyond } = reach
        const [width, back] =
          cut.kind === 'wrapped'
            ? [2 * cut.halfAngle * beyond, beyond * (1 - Math.cos(SECTOR_STEP / 2))]
            : [2 * cut.radius, beyond - Math.sqrt(Math.max(0, beyond ** 2 - cut.radius ** 2))]
        return more + cut.bearings.length * width * back * (to - from)
      }, sum)
    }, 0)

/** One part as a closed solid. The same part and options give the same bytes. */
export const partSolid = (
  kernel: SolidKernel,
  name: string,
  part: Part,
  options: PartSolidOptions,
): PartSolid => {
  const rings = partRings(part, options.bandRadius)
  const reach = wallReach(rings)
  const cuts = wallCuts(part.openings, reach.marked)
  const cutting: Cutting = { rings, faces: faceWork(part, rings), cuts, reach }
  const mesh = withSolids((own) => meshFrom(name, solidOf(kernel, own, cutting, options)))
  const blank = profileVolume(rings)
  const wall = wallCutAway(cutting, options.facets)
  const face = faceCutAway(cutting, options.facets)
  const cutAway = wall.volume + face.volume
  // A polygon with its corners on a circle is that share smaller; of what is cut the wall's facets take their share too.
  const roundLoss = 1 - facetShare(options.facetsRound)
  return {
    name,
    part,
    mesh,
    rings,
    facetsRound: options.facetsRound,
    volume: blank - cutAway,
    volumeError:
      roundLoss * (blank + 2 * cutAway) + wall.left + face.left + nicked(cutting) + ROUNDING * blank,
  }
}
