import type { Metres } from '#basis/units.ts'
import type { Can, Measured } from '#stove/model.ts'

/** The two ends of a can as it stands. */
export type WhichEnd = 'bottom' | 'top'

/**
 * Steepest side of a can that tapers, from upright [deg]. Pails and tumblers that nest lean 2° to 8°, from memory;
 * a wall that leans more than this is a bowl, and was more likely mismeasured.
 */
export const STEEPEST_TAPER = 15

const along = (from: number, to: number, share: number): number => from + (to - from) * share

/** Outside of the body at one end; of a can that does not taper, anywhere [m]. */
export const bodyAtEnd = (can: Can, which: WhichEnd): Measured => can.taper?.[which] ?? can.bodyDiameter

/** Outside of the body at a height above the bottom edge [m]. */
export const bodyAt = (can: Can, height: number): Measured => {
  const { taper } = can
  if (taper === undefined) return can.bodyDiameter
  const share = height / can.height.value
  return {
    value: along(taper.bottom.value, taper.top.value, share) as Metres,
    tolerance: Math.max(taper.bottom.tolerance, taper.top.tolerance) as Metres,
  }
}

/** The body halfway up, which is also its mean; either tolerance may be off at once [m]. */
export const meanBody = ({ bottom, top }: NonNullable<Can['taper']>): Measured => ({
  value: ((bottom.value + top.value) / 2) as Metres,
  tolerance: ((bottom.tolerance + top.tolerance) / 2) as Metres,
})

/** The end at which the body is wider; the top of one that does not taper. */
export const widerEnd = (can: Can): WhichEnd =>
  bodyAtEnd(can, 'bottom').value > bodyAtEnd(can, 'top').value ? 'bottom' : 'top'

/** Outside of the body where it is widest [m]. */
export const widestBody = (can: Can): Measured => bodyAtEnd(can, widerEnd(can))

/** Outside of the body where it is narrowest [m]. */
export const narrowestBody = (can: Can): Measured =>
  bodyAtEnd(can, widerEnd(can) === 'top' ? 'bottom' : 'top')

const insideOf = (outside: Measured, { bodyWall }: Can): Measured => ({
  value: (outside.value - 2 * bodyWall) as Metres,
  tolerance: outside.tolerance,
})

/** Inside of the body at one end [m]. */
export const insideAtEnd = (can: Can, which: WhichEnd): Measured => insideOf(bodyAtEnd(can, which), can)

/** Inside of the body where it is narrowest [m]. */
export const narrowestInside = (can: Can): Measured => insideOf(narrowestBody(can), can)

/** How far the side leans outwards on the way up, negative for a can that narrows [deg]. */
export const taperAngle = (can: Can): number =>
  (Math.atan2((bodyAtEnd(can, 'top').value - bodyAtEnd(can, 'bottom').value) / 2, can.height.value) * 180) /
  Math.PI

/** From edge to edge along the wall; the height of a can that does not taper [m]. */
export const slantHeight = (can: Can): Metres =>
  Math.hypot(can.height.value, (bodyAtEnd(can, 'top').value - bodyAtEnd(can, 'bottom').value) / 2) as Metres
