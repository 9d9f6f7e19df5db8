import { type PlacedPart, placeParts } from '#stove/assembly/place.ts'
import { type Profile, type ProfilePlate, profileOf } from '#stove/assembly/profile.ts'
import type { Duty, Opening, Stove } from '#stove/model.ts'
import { holeArea, holeCount, hydraulicDiameter } from '#stove/opening/area.ts'
import { type Chamber, type ChamberMap, mapChambers, type Throat } from './chambers.ts'
import { damperFreeShare } from './damper.ts'
import { OUTSIDE } from './network.ts'
import { duct, holes, type PassageShape, throat } from './resistance.ts'

/**
 * Turns a stove into a network: one function for every layout. What comes out still knows its names and shapes, so
 * that the answer can be told in the maker's words; the solver sees numbers only.
 */
export interface DraughtPlan {
  readonly nodes: readonly DraughtNode[]
  readonly links: readonly DraughtLink[]
  readonly bed: BedPlace
}

export interface DraughtNode {
  readonly name: string
  readonly space: 'air' | 'bed' | 'flame'
  /** Height at which the node's pressure is meant [m]. */
  readonly height: number
  /** Flow area of the chamber [m²]. */
  readonly area: number
}

export interface DraughtLink {
  readonly kind: 'opening' | 'throat' | 'gap' | 'bed'
  readonly name: string
  readonly part: string | null
  readonly opening: string | null
  readonly duty: Duty | null
  readonly from: number
  readonly to: number
  /** Where the passage lies [m]; a gap or bed link reaches from its nodes' heights. */
  readonly height: number
  /** Free area [m²]. */
  readonly area: number
  readonly hydraulicDiameter: number
  readonly count: number
  readonly shape: PassageShape
  /** Gap and bed links: how far up they reach [m]. */
  readonly length: number
}

/** The fuel bed and its links, which change as the front travels. */
export interface BedPlace {
  readonly part: string
  readonly base: number
  readonly depth: number
  /** [m²] */
  readonly area: number
  /** Index of each bed link, from the floor up, and the heights it joins above the bed's base [m]. */
  readonly segments: readonly { readonly link: number; readonly from: number; readonly to: number }[]
}

export type PlanOutcome =
  | { readonly ok: true; readonly plan: DraughtPlan }
  | { readonly ok: false; readonly reason: PlanFailure }

export interface PlanFailure {
  readonly code: 'no fuel can' | 'no floor under the fuel' | 'no air to the fuel' | 'no way out'
  readonly sentence: string
}

const fail = (code: PlanFailure['code'], sentence: string): PlanOutcome => ({
  ok: false,
  reason: { code, sentence },
})

interface Draft {
  readonly from: Chamber | 'bed' | null
  readonly to: Chamber | 'bed' | null
  readonly link: Omit<DraughtLink, 'from' | 'to'>
}

/** The floor the fuel lies on: a grate in the fuel can, or the can's own bottom [m]. */
const floorUnderFuel = (
  stove: Stove,
  fuelCan: PlacedPart,
  profile: Profile,
  placed: readonly PlacedPart[],
) => {
  const grate = placed.find(
    ({ part, placement, name }) =>
      part.form === 'disc' &&
      part.role === 'grate' &&
      placement.host === fuelCan.name &&
      stove.parts.has(name),
  )
  if (grate !== undefined) return profile.plates.find((plate) => plate.part === grate.name) ?? null
  return profile.plates.find((plate) => plate.part === fuelCan.name && plate.face === 'bottom') ?? null
}

/** Level, closed ground under the stove. */
const GROUND: ProfilePlate = {
  part: 'ground',
  face: null,
  bore: null,
  innerRadius: 0,
  outerRadius: 10,
  height: 0,
}

/** The pot as a plate on the pot stand, where the stove is built for one. */
const potPlate = (stove: Stove, placed: readonly PlacedPart[]): ProfilePlate[] => {
  if (stove.potDiameter === null) return []
  const stands = placed.filter(({ part }) => part.form === 'can' && part.role === 'pot stand')
  const highest = Math.max(...stands.map((stand) => stand.top))
  if (stands.length === 0) return []
  return [
    {
      part: 'pot',
      face: null,
      bore: null,
      innerRadius: 0,
      outerRadius: stove.potDiameter / 2,
      height: highest,
    },
  ]
}

const thicknessAt = (placed: PlacedPart, opening: Opening): number => {
  if (placed.part.form !== 'can') return placed.part.thickness
  return opening.kind === 'row' ? placed.part.can.bodyWall : placed.part.can.endWall
}

/** Row of holes in a wall, behind a damper where one lies over it. */
const wallOpening = (
  key: string,
  opening: Extract<Opening, { kind: 'row' }>,
  host: PlacedPart,
  bands: readonly PlacedPart[],
): Omit<DraughtLink, 'from' | 'to'> | null => {
  let share = 1
  for (const band of bands) share = Math.min(share, damperFreeShare(opening, host, band) ?? 1)
  const count = holeCount(opening)
  const area = holeArea(opening) * share
  if (count === 0 || area * count < 1e-8) return null
  // A partly covered hole keeps its shape's proportion: 4A/P shrinks with the root of the area.
  const diameter = hydraulicDiameter(opening) * Math.sqrt(share)
  return {
    kind: 'opening',
    name: `${key} in ${host.name}`,
    part: host.name,
    opening: key,
    duty: opening.duty,
    height: host.base + opening.height,
    area: area * count,
    hydraulicDiameter: diameter,
    count,
    shape: holes(count, area, diameter, thicknessAt(host, opening)),
    length: 0,
  }
}

const chamberArea = (chamber: Chamber | null): number =>
  chamber === null
    ? Number.POSITIVE_INFINITY
    : Math.PI * (chamber.outerRadius ** 2 - chamber.innerRadius ** 2)

/** Openings in a flat face: which chambers they join depends on where in the face they lie. */
const faceOpenings = (
  key: string,
  opening: Extract<Opening, { kind: 'pattern' | 'vanes' }>,
  host: PlacedPart,
  plate: ProfilePlate,
  map: ChamberMap,
): Draft[] => {
  const radii =
    opening.kind === 'pattern'
      ? opening.holes.map((hole) => hole.radius as number)
      : Array.from({ length: opening.count }, () => (opening.innerRadius + opening.outerRadius) / 2)
  const groups = new Map<string, { below: Chamber | null; above: Chamber | null; count: number }>()
  for (const radius of radii) {
    const sides = map.across(plate, radius)
    if (sides === 'covered' || sides.below === sides.above) continue
    const id = `${sides.below?.id ?? 'open'}>${sides.above?.id ?? 'open'}`
    const group = groups.get(id) ?? { ...sides, count: 0 }
    groups.set(id, { ...group, count: group.count + 1 })
  }
  const one = holeArea(opening)
  const diameter = hydraulicDiameter(opening)
  return [...groups.values()]
    .filter(() => one > 1e-9)
    .map(({ below, above, count }) => ({
      from: below,
      to: above,
      link: {
        kind: 'opening' as const,
        name: `${key} in ${host.name}`,
        part: host.name,
        opening: key,
        duty: opening.duty,
        height: plate.height,
        area: one * count,
        hydraulicDiameter: diameter,
        count,
        shape: throat(one * count, diameter, chamberArea(below), chamberArea(above)),
        length: 0,
      },
    }))
}

const throatLink = (
  t: Throat,
  placed: readonly PlacedPart[],
  fuelCan: PlacedPart,
): Omit<DraughtLink, 'from' | 'to'> => {
  const nameOf = (chamber: Chamber | null): string =>
    chamber === null ? 'the open air' : chamberName(chamber, fuelCan)
  const host = placed.find(({ name }) => name === t.rim?.part)
  const key = t.rim?.bore ?? null
  const bore = key === null || host === undefined ? undefined : host.part.openings.get(key)
  return {
    kind: bore === undefined ? 'throat' : 'opening',
    name:
      bore === undefined
        ? `passage from ${nameOf(t.below)} to ${nameOf(t.above)}`
        : `${key} in ${host?.name}`,
    part: host?.name ?? null,
    opening: bore === undefined ? null : key,
    duty: bore?.duty ?? null,
    height: t.height,
    area: t.area,
    hydraulicDiameter: t.hydraulicDiameter,
    count: 1,
    shape: throat(t.area, t.hydraulicDiameter, chamberArea(t.below), chamberArea(t.above)),
    length: 0,
  }
}

/** What a maker would call a space. */
const chamberName = (chamber: Chamber, fuelCan: PlacedPart): string => {
  if (chamber.innerRadius > 0) return `gap in ${chamber.within}`
  const middle = (chamber.bottom + chamber.top) / 2
  if (middle > fuelCan.top) return `space in ${chamber.within}`
  return middle < fuelCan.base || chamber.within !== fuelCan.name || chamber.top < fuelCan.top - 1e-3
    ? `space under the fuel in ${chamber.within}`
    : `flame space in ${chamber.within}`
}

/** Heights that belong to one node of a gap [m]. */
const SAME_NODE = 1e-3

export const planDraught = (stove: Stove): PlanOutcome => {
  const outcome = placeParts(stove)
  if (!outcome.ok)
    return fail('no fuel can', outcome.problems[0]?.fix ?? 'The assembly does not hold together.')
  const placed = outcome.value
  const fuelCan = placed.find(({ part }) => part.form === 'can' && part.role === 'fuel can')
  if (fuelCan === undefined || fuelCan.part.form !== 'can')
    return fail('no fuel can', 'No part is the fuel can, so there is nowhere to put the fuel.')
  const bare = profileOf(placed)
  const floor = floorUnderFuel(stove, fuelCan, bare, placed)
  if (floor === null)
    return fail(
      'no floor under the fuel',
      `Nothing holds the fuel in ${fuelCan.name}: its bottom is open and no grate stands in it.`,
    )
  const base = floor.height
  const depth = Math.min(stove.fuel.level, fuelCan.top - base)
  const profile: Profile = { walls: bare.walls, plates: [GROUND, ...bare.plates, ...potPlate(stove, placed)] }
  const map = mapChambers(profile, [base, base + depth])

  const bedRadius = fuelCan.part.can.bodyDiameter.value / 2 - fuelCan.part.can.bodyWall
  const bedArea = Math.PI * bedRadius * bedRadius
  const isBed = (chamber: Chamber | null): boolean =>
    chamber !== null &&
    chamber.innerRadius === 0 &&
    chamber.within === fuelCan.name &&
    chamber.bottom >= base - 1e-4 &&
    chamber.top <= base + depth + 1e-4
  const side = (chamber: Chamber | null): Chamber | 'bed' | null => (isBed(chamber) ? 'bed' : chamber)

  const drafts: Draft[] = []
  const bands = placed.filter(({ part }) => part.form === 'band')
  for (const host of placed) {
    if (host.part.form === 'band') continue
    for (const [key, opening] of host.part.openings) {
      if (opening.kind === 'row') {
        const link = wallOpening(key, opening, host, bands)
        if (link === null) continue
        const outside = side(map.beside(host.name, link.height, 'outside'))
        const inside = side(map.beside(host.name, link.height, 'inside'))
        if (outside !== inside) drafts.push({ from: outside, to: inside, link })
        continue
      }
      // A bore is the inner edge of its plate and comes out as a throat.
      if (opening.kind === 'bore') continue
      const plate = profile.plates.find((p) => p.part === host.name && p.face === opening.face)
      if (plate === undefined) continue
      drafts.push(
        ...faceOpenings(key, opening, host, plate, map).map((draft) => ({
          from: side(draft.from as Chamber | null),
          to: side(draft.to as Chamber | null),
          link: draft.link,
        })),
      )
    }
  }
  for (const t of map.throats) {
    const from = side(t.below)
    const to = side(t.above)
    // The fuel's own top and the floor's rim are no throats: the bed links and the floor's holes are the way.
    if (from === 'bed' || to === 'bed') continue
    drafts.push({ from, to, link: throatLink(t, placed, fuelCan) })
  }

  return number(drafts, map, fuelCan, { base, depth, area: bedArea })
}

/** Gives chambers and the bed their node numbers and ties gaps and bed together. */
const number = (
  drafts: readonly Draft[],
  map: ChamberMap,
  fuelCan: PlacedPart,
  bedSize: { readonly base: number; readonly depth: number; readonly area: number },
): PlanOutcome => {
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
      })
    }
  }

  // The bed: a node at the floor and one at each row of holes in its wall; the flame space above is its top.
  const top = bedSize.base + bedSize.depth
  const flame = map.chambers.find(
    (chamber) =>
      chamber.innerRadius === 0 &&
      chamber.bottom <= top + 1e-4 &&
      chamber.top > top + 1e-4 &&
      nodesOf.has(chamber),
  )
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
      }) - 1
    segments.push({ link: index, from: height - bedSize.base, to: upTo - bedSize.base })
  }
  return prune(nodes, links, { part: fuelCan.name, ...bedSize, segments })
}

/** Leaves out spaces that the open air cannot reach; says so when the fuel is one of them. */
const prune = (
  nodes: readonly DraughtNode[],
  links: readonly DraughtLink[],
  bedPlace: BedPlace,
): PlanOutcome => {
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
  const bedLinks = bedPlace.segments.map((segment) => links[segment.link] as DraughtLink)
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
  return {
    ok: true,
    plan: {
      nodes: keptNodes,
      links: keptLinks,
      bed: {
        ...bedPlace,
        segments: bedPlace.segments.map((segment) => ({
          ...segment,
          link: newLink.get(segment.link) as number,
        })),
      },
    },
  }
}
