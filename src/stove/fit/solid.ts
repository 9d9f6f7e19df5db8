import type { Metres } from '#basis/units.ts'
import { CAN_DEFAULTS } from '#stove/can/defaults.ts'
import { isSeamed, seamAt, type WhichEnd } from '#stove/can/ends.ts'
import { bodyAt } from '#stove/can/taper.ts'
import type { Can, CanPart, DiscPart, Face, Measured, Opening } from '#stove/model.ts'
import { vaneRise } from './partMass.ts'

/**
 * A part as a figure of revolution: upright rings of tin, radii and heights above its lowest point [m].
 * All parts of a bundle share one axis.
 */
export interface Solid {
  readonly rings: readonly SolidRing[]
  readonly height: number
}

export interface SolidRing {
  readonly inner: number
  readonly outer: number
  readonly bottom: number
  readonly top: number
}

/** `largest tin`: every outside at the large, every inside at the small end of its tolerance: what then goes, goes. */
export type SolidSize = 'largest tin' | 'nominal'

const radius = (measured: Measured, size: SolidSize, side: 1 | -1): number =>
  (measured.value + (size === 'nominal' ? 0 : side * measured.tolerance)) / 2

/** Radius of the largest hole bored in the middle of a face [m]. */
const boreOf = (openings: ReadonlyMap<string, Opening>, face: Face): number => {
  let bore = 0
  for (const opening of openings.values())
    if (opening.kind === 'bore' && opening.face === face) bore = Math.max(bore, opening.diameter / 2)
  return bore
}

/** Bent vanes of a flat face that reaches from `bottom` to `top`, as rings above or below it. */
const vaneRings = (
  openings: ReadonlyMap<string, Opening>,
  face: Face,
  bottom: number,
  top: number,
): readonly SolidRing[] =>
  [...openings.values()].flatMap((opening) => {
    const rise = vaneRise(opening)
    if (opening.kind !== 'vanes' || opening.face !== face || rise === 0) return []
    const { innerRadius: inner, outerRadius: outer, bend } = opening
    return bend === 'up'
      ? [{ inner, outer, bottom: top, top: top + rise }]
      : [{ inner, outer, bottom: bottom - rise, top: bottom }]
  })

const wallRadii = (
  can: Can,
  height: number,
  size: SolidSize,
): { readonly inside: number; readonly body: number } => {
  const body = bodyAt(can, height)
  const inside = { ...body, value: (body.value - 2 * can.bodyWall) as Metres }
  return { inside: radius(inside, size, -1), body: radius(body, size, 1) }
}

const endRings = ({ can, openings }: CanPart, which: WhichEnd, size: SolidSize): readonly SolidRing[] => {
  const end = can[which]
  const { inside, body } = wallRadii(can, which === 'bottom' ? 0 : can.height.value, size)
  /** A ring given by how far it lies inside the edge. */
  const ring = (inner: number, outer: number, near: number, far: number): SolidRing =>
    which === 'bottom'
      ? { inner, outer, bottom: near, top: far }
      : { inner, outer, bottom: can.height.value - far, top: can.height.value - near }
  const rings: SolidRing[] = []
  if (end.kind === 'pull-off' || end.kind === 'friction') {
    // The ledge lies somewhere inside the seam or a little below; which opening it leaves is what counts.
    const opening = Math.min(inside, radius(end.opening, size, -1))
    const depth = Math.max(can.seamHeight, CAN_DEFAULTS.countersink.value)
    rings.push(ring(opening, body, 0, depth))
  }
  if (isSeamed(end))
    rings.push(ring(inside, Math.max(body, radius(seamAt(can, which), size, 1)), 0, can.seamHeight))
  if (end.kind === 'plain' || end.kind === 'drawn') {
    const near = end.kind === 'plain' ? end.countersink : 0
    const panel = ring(
      boreOf(openings, which),
      end.kind === 'plain' ? inside : body,
      near,
      near + can.endWall,
    )
    rings.push(panel, ...vaneRings(openings, which, panel.bottom, panel.top))
  }
  return rings
}

const settle = (rings: readonly SolidRing[]): Solid => {
  const lowest = Math.min(...rings.map(({ bottom }) => bottom))
  return {
    rings: rings.map((ring) => ({ ...ring, bottom: ring.bottom - lowest, top: ring.top - lowest })),
    height: Math.max(...rings.map(({ top }) => top)) - lowest,
  }
}

/** A wall that tapers is counted in so many steps, each as thick as the wall is over its height. */
const TAPER_STEPS = 16

const wallRings = (can: Can, size: SolidSize): readonly SolidRing[] => {
  const steps = can.taper === undefined ? 1 : TAPER_STEPS
  const height = can.height.value
  return Array.from({ length: steps }, (_, index) => {
    const [bottom, top] = [(height * index) / steps, (height * (index + 1)) / steps]
    const [low, high] = [wallRadii(can, bottom, size), wallRadii(can, top, size)]
    return { inner: Math.min(low.inside, high.inside), outer: Math.max(low.body, high.body), bottom, top }
  })
}

/** A can as it stands [m]. Beads lie within the thickness of the seams and are left out. */
export const canSolid = (part: CanPart, size: SolidSize): Solid =>
  settle([...wallRings(part.can, size), ...endRings(part, 'bottom', size), ...endRings(part, 'top', size)])

/** A flat disc with its bore and bent vanes, as it lies in the stove [m]. */
export const discSolid = (part: DiscPart, size: SolidSize): Solid =>
  settle([
    {
      inner: boreOf(part.openings, 'face'),
      outer: radius(part.diameter, size, 1),
      bottom: 0,
      top: part.thickness,
    },
    ...vaneRings(part.openings, 'face', 0, part.thickness),
  ])

/** The same thing turned upside down. */
export const upsideDown = ({ rings, height }: Solid): Solid => ({
  height,
  rings: rings.map((ring) => ({ ...ring, bottom: height - ring.top, top: height - ring.bottom })),
})

/** Half the widest place [m]. */
export const widestRadius = ({ rings }: Solid): number => Math.max(...rings.map(({ outer }) => outer))

/** Far below what a caliper shows; keeps equal radii from biting by rounding [m]. */
const TOUCH = 1e-9

/**
 * Lowered from above along the same axis, how high the upper thing’s lowest point comes to rest above the
 * lower thing’s [m]; −Infinity where it falls past it. Below nothing it reaches down round the lower one.
 */
export const restHeight = (lower: Solid, upper: Solid): number => {
  let rest = Number.NEGATIVE_INFINITY
  for (const under of lower.rings)
    for (const over of upper.rings)
      if (under.inner < over.outer - TOUCH && over.inner < under.outer - TOUCH)
        rest = Math.max(rest, under.top - over.bottom)
  return rest
}
