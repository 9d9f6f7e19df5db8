import { type Outcome, orThrow } from '#basis/problem.ts'
import { toMillimetres } from '#basis/units.ts'
import { type PlacedPart, placeParts } from '#stove/assembly/place.ts'
import type { Stove, VanesOpening } from '#stove/model.ts'
import type { Pose } from './mesh.ts'
import type { PartSolid } from './part.ts'
import type { ProfileRing } from './profile.ts'
import { tongueReach } from './vanes.ts'

/** Where a part stands: its pose, and the rings it takes up there. */
export interface Standing {
  readonly solid: PartSolid
  readonly pose: Pose
  readonly rings: readonly ProfileRing[]
  /**
   * How far it was raised above where the stove file's sums put it, so that tin does not run through tin: a seam on a ring,
   * a can on the thickness of a floor [mm].
   */
  readonly lift: number
}

const isFlat = ({ what }: ProfileRing): boolean => what === 'disc' || what === 'panel' || what === 'ledge'

/** Flat rings with their bores: what a can hangs in is open there. */
const bored = ({ part, rings }: PartSolid): readonly ProfileRing[] => {
  const middle = (lowest(rings) + highest(rings)) / 2
  return rings.map((ring) => {
    if (!isFlat(ring)) return ring
    const face = part.form === 'disc' ? 'face' : ring.to < middle ? 'bottom' : 'top'
    const bores = [...part.openings.values()].flatMap((opening) =>
      opening.kind === 'bore' && opening.face === face ? [toMillimetres(opening.diameter) / 2] : [],
    )
    return { ...ring, inner: Math.max(ring.inner, ...bores) }
  })
}

/** Rings of a part with the room that bent vanes take above and below their face, in the part's own frame [mm]. */
export const roomOf = (solid: PartSolid): readonly ProfileRing[] => {
  const { part, rings } = solid
  return [
    ...bored(solid),
    ...[...part.openings.values()].flatMap((opening): readonly ProfileRing[] => {
      if (opening.kind !== 'vanes') return []
      const face = rings.find(isFlat)
      return face === undefined ? [] : [vaneRoom(opening, face)]
    }),
  ]
}

const vaneRoom = (vanes: VanesOpening, face: ProfileRing): ProfileRing => {
  const reach = tongueReach(vanes, face.to - face.from)
  const outer = Math.hypot(toMillimetres(vanes.outerRadius), toMillimetres(vanes.width))
  const inner = toMillimetres(vanes.innerRadius)
  return vanes.bend === 'up'
    ? { what: face.what, inner, outer, from: face.to, to: face.to + reach }
    : { what: face.what, inner, outer, from: face.from - reach, to: face.from }
}

export const raised = (rings: readonly ProfileRing[], by: number): readonly ProfileRing[] =>
  rings.map((ring) => ({ ...ring, from: ring.from + by, to: ring.to + by }))

export const upsideDown = (rings: readonly ProfileRing[]): readonly ProfileRing[] =>
  rings.map((ring) => ({ ...ring, from: -ring.to, to: -ring.from }))

export const lowest = (rings: readonly ProfileRing[]): number => Math.min(...rings.map(({ from }) => from))
export const highest = (rings: readonly ProfileRing[]): number => Math.max(...rings.map(({ to }) => to))
export const widest = (rings: readonly ProfileRing[]): number => Math.max(...rings.map(({ outer }) => outer))

/** Tin that only touches has this much to spare [mm]. */
const TOUCH = 1e-6

/** Whether two rings would lie in each other’s way if one were moved up or down past the other. */
export const overlapAcross = (a: ProfileRing, b: ProfileRing): boolean =>
  a.inner < b.outer - TOUCH && b.inner < a.outer - TOUCH

const overlap = (a: ProfileRing, b: ProfileRing): boolean =>
  overlapAcross(a, b) && a.from < b.to - TOUCH && b.from < a.to - TOUCH

/** A part that would have to be raised by more than this does not go in at all, which the checks of a stove say [mm]. */
const MOST_LIFT = 8

/** How far rings have to be raised to come free of those already there; 0 where that is too far to mean anything [mm]. */
const liftFree = (rings: readonly ProfileRing[], there: readonly ProfileRing[]): number => {
  let lift = 0
  for (let round = 0; round < 20; round += 1) {
    const now = raised(rings, lift)
    const needed = Math.max(
      0,
      ...now.flatMap((one) => there.flatMap((other) => (overlap(one, other) ? [other.to - one.from] : []))),
    )
    if (needed === 0) return lift
    lift += needed
    if (lift > MOST_LIFT) return 0
  }
  return 0
}

const solidOf = (solids: readonly PartSolid[], name: string): PartSolid => {
  const solid = solids.find((one) => one.name === name)
  if (solid === undefined) throw new RangeError(`There is no solid of ${name}.`)
  return solid
}

/** Whether a part rests on its host, and so may be raised; one that is held by screws or slipped over stays put. */
const rests = ({ placement }: PlacedPart): boolean =>
  placement.place === 'hangs in' || placement.place === 'sits on' || placement.place === 'stands in'

/** Every placed part where it stands in the stove, in assembly order [mm]. */
export const standing = (stove: Stove, solids: readonly PartSolid[]): readonly Standing[] => {
  const placed = orThrow(placeParts(stove) satisfies Outcome<readonly PlacedPart[]>)
  const there: Standing[] = []
  const lifts = new Map<string, number>()
  for (const part of placed) {
    const solid = solidOf(solids, part.name)
    const host = part.placement.host
    const carried = host === null ? 0 : (lifts.get(host) ?? 0)
    const base = toMillimetres(part.base) + carried
    const rings = raised(roomOf(solid), base)
    const more = rests(part)
      ? liftFree(
          rings,
          there.flatMap((other) => other.rings),
        )
      : 0
    lifts.set(part.name, carried + more)
    there.push({
      solid,
      pose: { turned: part.turned, z: base + more },
      rings: raised(rings, more),
      lift: carried + more,
    })
  }
  return there
}
