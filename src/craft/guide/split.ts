import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { toMillimetres } from '#basis/units.ts'
import type { CollarHole } from './collarShape.ts'
import type { GuideOptions } from './options.ts'

/** How a collar is parted, and where its ears are. */
export interface Split {
  readonly pieces: number
  /** Bearings, as printed, of the planes between the pieces [deg]. */
  readonly bearings: readonly number[]
  /** Where the ears begin over the edge the collar is set by [mm]: 0, or above the holes where they would be in the way. */
  readonly earsFrom: number
  /** Heights of the screws [mm]. */
  readonly screws: readonly number[]
}

/** Of an ear on one side of the plane, and how far it stands out [mm]. */
export const EAR_THICKNESS = 6
export const EAR_REACH = 14
/** Between two pieces, so that the screws draw them on to the can [mm]. */
export const SPLIT_GAP = 1
/** An M4 screw with play [mm]. */
export const SCREW_HOLE = 4.5
/** Radius of the screws beyond the collar [mm]. */
export const SCREW_AT = 7

/** Kept whole between a guide hole and an ear, and between one and a plane [mm]. */
const BESIDE_EAR = 1
const BESIDE_PLANE = 2
/** Half of the front mark, with room [mm]. */
const FRONT_HALF = 3
/** More pieces than this no one would put together. */
const MOST_PIECES = 6
/** An ear that is higher gets two screws [mm]. */
const TWO_SCREWS = 40
/** An ear’s slope below, as steep as a printer builds without support, and wall round a screw [mm]. */
const ROUND_SCREW = 5

export interface SplitWish {
  readonly part: string
  readonly holes: readonly CollarHole[]
  readonly front: number
  readonly inner: number
  readonly outer: number
  readonly top: number
  readonly ceiling: number
  readonly options: GuideOptions
}

/** Box of a piece laid with its middle towards +y, ears included [mm]. */
const pieceBox = (outer: number, pieces: number): { readonly wide: number; readonly deep: number } => {
  const half = Math.PI / pieces
  const reach = outer + EAR_REACH
  return {
    wide: 2 * (reach * Math.sin(half) + EAR_THICKNESS * Math.cos(half)),
    deep: outer - Math.max(0, (outer - 20) * Math.cos(half)) + EAR_THICKNESS,
  }
}

const fits = (box: { wide: number; deep: number }, { bed }: GuideOptions): boolean => {
  const [width, depth] = [toMillimetres(bed.width), toMillimetres(bed.depth)]
  return (box.wide <= width && box.deep <= depth) || (box.wide <= depth && box.deep <= width)
}

/** Smallest arc between planes and what must stay clear of them, its own half width taken off, at the collar's outside [mm]. */
const clearance = (wish: SplitWish, pieces: number, first: number): number => {
  const pitch = 360 / pieces
  const near = (bearing: number): number => {
    const off = (((bearing - first) % pitch) + pitch) % pitch
    return (Math.min(off, pitch - off) * Math.PI * wish.outer) / 180
  }
  return Math.min(
    near(wish.front) - FRONT_HALF,
    ...wish.holes.map(({ printedBearing, diameter }) => near(printedBearing) - diameter / 2),
  )
}

/** The bearing of the first plane that stays clearest, on a scale of half degrees. */
const clearest = (wish: SplitWish, pieces: number): { readonly first: number; readonly clear: number } => {
  let best = { first: 90, clear: Number.NEGATIVE_INFINITY }
  for (let step = 0; step < 720 / pieces; step += 1) {
    // From the sides on: the front stays one piece where nothing speaks against it.
    const first = (90 + step / 2) % 360
    const clear = clearance(wish, pieces, first)
    if (clear > best.clear + 1e-9) best = { first, clear }
  }
  return best
}

const refusal = (wish: SplitWish, code: string, value: string, allowed: string, fix: string): Problem => ({
  code,
  field: `guide for ${wish.part}`,
  value,
  allowed,
  fix,
})

const screwsOf = (from: number, to: number): readonly number[] =>
  to - from > TWO_SCREWS ? [from + (to - from) / 4, to - (to - from) / 4] : [(from + to) / 2]

/** Parts a collar so that it comes off the can and each piece fits on the bed, clear of the holes. */
export const chooseSplit = (wish: SplitWish): Outcome<{ readonly split: Split; readonly top: number }> => {
  const { outer, options } = wish
  let pieces = 2
  while (pieces <= MOST_PIECES && !fits(pieceBox(outer, pieces), options)) pieces += 1
  if (pieces > MOST_PIECES)
    return bad(
      refusal(
        wish,
        'guide.bed',
        `a collar ${(2 * outer).toFixed(0)} mm across on a bed of ${toMillimetres(options.bed.width)} × ${toMillimetres(options.bed.depth)} mm`,
        `up to ${MOST_PIECES} pieces that each fit on the bed`,
        'Print it on a larger printer, or drill by the template.',
      ),
    )
  const { first, clear } = clearest(wish, pieces)
  const bearings = Array.from({ length: pieces }, (_, index) => (first + (360 * index) / pieces) % 360)
  const highest = Math.max(...wish.holes.map(({ up, diameter }) => up + diameter / 2))
  if (clear >= EAR_THICKNESS + BESIDE_EAR)
    return good({ split: { pieces, bearings, earsFrom: 0, screws: screwsOf(0, wish.top) }, top: wish.top })
  // Ears above the holes, with a slope under them that needs no support.
  const earsFrom = highest + BESIDE_PLANE
  const [slopeEnd, top] = [earsFrom + EAR_REACH, earsFrom + EAR_REACH + 2 * ROUND_SCREW]
  if (clear >= BESIDE_PLANE && top <= wish.ceiling)
    return good({ split: { pieces, bearings, earsFrom, screws: screwsOf(slopeEnd - ROUND_SCREW, top) }, top })
  return bad(
    refusal(
      wish,
      'guide.split',
      `${wish.holes.length} guide holes, ${clear.toFixed(1)} mm clear beside the best plane`,
      `${EAR_THICKNESS + BESIDE_EAR} mm beside a plane between two pieces, or ${BESIDE_PLANE} mm and ${(top - earsFrom).toFixed(0)} mm of can above the holes for the ears`,
      'The holes are too close together for a collar in pieces. Use a smaller pilot, or drill this row by the template.',
    ),
  )
}
