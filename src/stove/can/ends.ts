import type { Metres } from '#basis/units.ts'
import type { Can, CanEnd, Measured } from '#stove/model.ts'
import { bodyAtEnd, insideAtEnd, type WhichEnd, widerEnd } from './taper.ts'

export type { WhichEnd } from './taper.ts'

/** Whether a double seam runs round this end. */
export const isSeamed = (end: CanEnd): boolean => end.kind !== 'drawn' && end.kind !== 'cut'

/** Whether this end is still whole. */
export const isWhole = (end: CanEnd): boolean => end.kind === 'plain' || end.kind === 'drawn'

/** Inside diameter of the plain body; of a can that tapers, halfway up [m]. */
export const bodyInside = (can: Can): Measured => ({
  value: (can.bodyDiameter.value - 2 * can.bodyWall) as Metres,
  tolerance: can.bodyDiameter.tolerance,
})

/** The end whose seam is measured: the wider of those that have one. */
const measuredSeam = (can: Can): WhichEnd => {
  const wider = widerEnd(can)
  return isSeamed(can[wider]) ? wider : wider === 'top' ? 'bottom' : 'top'
}

/** Outside over the seam at one end: both seams of a can that tapers stand out equally far beyond its body [m]. */
export const seamAt = (can: Can, which: WhichEnd): Measured => {
  if (can.taper === undefined) return can.seamDiameter
  const overhang = can.seamDiameter.value - bodyAtEnd(can, measuredSeam(can)).value
  return {
    value: (bodyAtEnd(can, which).value + overhang) as Metres,
    tolerance: can.seamDiameter.tolerance,
  }
}

/** Outside diameter at one end: over the seam where there is one, else of the body [m]. */
export const outsideAt = (can: Can, which: WhichEnd): Measured =>
  isSeamed(can[which]) ? seamAt(can, which) : bodyAtEnd(can, which)

/** The widest the can is anywhere [m]. */
export const widestOutside = (can: Can): Measured => {
  if (can.taper === undefined)
    return isSeamed(can.bottom) || isSeamed(can.top) ? can.seamDiameter : can.bodyDiameter
  const [bottom, top] = [outsideAt(can, 'bottom'), outsideAt(can, 'top')]
  return bottom.value > top.value ? bottom : top
}

const openingOf = (can: Can, which: WhichEnd): Measured | null => {
  const end = can[which]
  switch (end.kind) {
    case 'plain':
    case 'drawn':
      return null
    case 'pull-off':
    case 'friction':
      return end.opening
    case 'open':
    case 'cut':
      // Where an end was cut out, one thickness of it is left inside the seam all round: 0.4 mm on the
      // diameter, less than the tolerance of any can that was not measured.
      return insideAtEnd(can, which)
  }
}

/** Clear diameter through the top as the can stands; null where the top is closed [m]. */
export const topOpening = (can: Can): Measured | null => openingOf(can, 'top')

/** Clear diameter through the bottom as the can stands; null where the bottom is closed [m]. */
export const bottomOpening = (can: Can): Measured | null => openingOf(can, 'bottom')

const depthInside = (end: CanEnd): number => (end.kind === 'plain' ? end.countersink : 0)

/**
 * What stands in the can stands this high above its bottom edge; null where the bottom is open [m].
 * The thickness of the end itself, 0.2 mm or so, is left out.
 */
export const floorHeight = (can: Can): Metres | null =>
  isWhole(can.bottom) ? (depthInside(can.bottom) as Metres) : null

/** Room between the ends of a can, or from an end to the open edge [m]. */
export const insideHeight = (can: Can): Metres =>
  (can.height.value - depthInside(can.bottom) - depthInside(can.top)) as Metres
