import { long } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import { bottomOpening, isSeamed, topOpening, type WhichEnd, widestOutside } from '#stove/can/ends.ts'
import { narrowestInside, widestBody } from '#stove/can/taper.ts'
import type { Can, Measured } from '#stove/model.ts'

/** What a can, ring or disc shows to another that is to go in, on or over it. Diameters [m]. */
export interface Mating {
  readonly name: string
  /** Its open ends; none where it is closed. */
  readonly mouths: readonly Mouth[]
  /** Outside, over the widest place; null for a ring nobody measured outside. */
  readonly widest: Measured | null
  /** Outside of the plain body where a seam stands out beyond it, else null. */
  readonly bodyUnderLip: Measured | null
  /** Where it is closed: the diameter of the recess its end lies in, which a narrower thing stands in. */
  readonly recess: Measured
  /** No seam and no end is left, only the bare edge of the wall at both ends. */
  readonly bareEdged: boolean
  /** One end has no seam, so the body can go in up to the seam of the other. */
  readonly canHang: boolean
}

export interface Mouth {
  readonly end: WhichEnd
  readonly opening: Measured
  /** The bare edge of a trimmed wall. */
  readonly bareEdge: boolean
}

const mouthOf = (can: Can, end: WhichEnd): readonly Mouth[] => {
  const opening = end === 'top' ? topOpening(can) : bottomOpening(can)
  return opening === null ? [] : [{ end, opening, bareEdge: can[end].kind === 'cut' }]
}

/** What to call a can that nobody named: by its code, else by its size. */
export const canName = (can: Can): string =>
  can.code ?? `the can of ${long(widestOutside(can).value)} by ${long(can.height.value)}`

/** What a can offers to others and asks of them; `through` says which of its ends may be gone into. */
export const canMating = (can: Can, name: string, through: WhichEnd | 'either'): Mating => {
  const lipped = isSeamed(can.top) || isSeamed(can.bottom)
  return {
    name,
    mouths: [
      ...(through === 'bottom' ? [] : mouthOf(can, 'top')),
      ...(through === 'top' ? [] : mouthOf(can, 'bottom')),
    ],
    widest: widestOutside(can),
    bodyUnderLip: lipped ? widestBody(can) : null,
    recess: narrowestInside(can),
    bareEdged: can.top.kind === 'cut' && can.bottom.kind === 'cut',
    canHang: isSeamed(can.top) !== isSeamed(can.bottom),
  }
}

/** A flat ring, such as a lid ring or the disc of a concentrator with its bore. */
export interface Ring {
  readonly opening: Measured
  /** Outside; leave it out where it does not matter. */
  readonly outside?: Measured
  readonly name?: string
}

/** The same of a flat ring. */
export const ringMating = (ring: Ring): Mating => ({
  name: ring.name ?? 'the ring',
  mouths: [{ end: 'top', opening: ring.opening, bareEdge: false }],
  widest: ring.outside ?? null,
  bodyUnderLip: null,
  recess: ring.opening,
  bareEdged: false,
  canHang: false,
})

/** A flat disc without a hole that matters. */
export interface Disc {
  readonly diameter: Measured
  readonly name?: string
}

/** The same of a flat disc, which nothing goes into. */
export const discMating = (disc: Disc): Mating => ({
  name: disc.name ?? 'the disc',
  mouths: [],
  widest: disc.diameter,
  bodyUnderLip: null,
  recess: { value: 0 as Metres, tolerance: 0 as Metres },
  bareEdged: false,
  canHang: false,
})
