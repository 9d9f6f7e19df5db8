import { long } from '#basis/text/bothUnits.ts'
import { isWhole, type WhichEnd } from '#stove/can/ends.ts'
import { narrowestInside } from '#stove/can/taper.ts'
import type { CanPart, Finding, PatternOpening, RowOpening } from '#stove/model.ts'
import { type Check, isCan, type PlacedCan } from '../context.ts'
import { note, warn } from '../finding.ts'
import { called, namedOpenings, says } from '../phrase.ts'
import { DRILL, JOBBER_LENGTHS, TIN } from '../rules.ts'

/** Overall length of the bit a shop sells for a diameter, between the rows of the table by straight line [m]. */
const overallLength = (diameter: number): number => {
  if (diameter > DRILL.chuckCapacity.value) return DRILL.stepDrillLength.value
  const after = JOBBER_LENGTHS.findIndex(([size]) => size >= diameter)
  const upper = JOBBER_LENGTHS[Math.max(after, 0)]
  const lower = JOBBER_LENGTHS[Math.max(after - 1, 0)]
  if (upper === undefined || lower === undefined || upper === lower) return upper?.[1] ?? 0
  return lower[1] + ((upper[1] - lower[1]) * (diameter - lower[0])) / (upper[0] - lower[0])
}

/** How far a bit stands out of the chuck [m]. */
const standsOut = (diameter: number): number => overallLength(diameter) - DRILL.gripped.value

/** Widest radius a hole's middle may have for the drill to reach it down a shaft; negative where it cannot at all [m]. */
export const reachDown = (diameter: number, depth: number, shaftRadius: number): number => {
  const free = standsOut(diameter)
  if (depth <= free) return shaftRadius
  return depth <= free + DRILL.drillHead.value ? shaftRadius - DRILL.chuckDiameter.value / 2 : -1
}

/** How deep the panel of an end lies inside the edge of its can; 0 for an end that is cut out or open [m]. */
export const sunk = ({ can }: CanPart, end: WhichEnd): number => {
  const { [end]: which } = can
  return which.kind === 'plain' ? which.countersink : 0
}

/** A pattern in the end of a can, drilled from outside the can or from within it. */
const endPattern = (placed: PlacedCan, opening: string, pattern: PatternOpening): readonly Finding[] => {
  const { name, part } = placed
  if (pattern.face === 'face' || !isWhole(part.can[pattern.face])) return []
  const far: WhichEnd = pattern.face === 'bottom' ? 'top' : 'bottom'
  const inside = narrowestInside(part.can).value / 2
  const radii = pattern.holes.map(({ radius }) => radius)
  const beyond = (reach: number): number => radii.filter((radius) => radius > reach + 1e-9).length
  const recess = sunk(part, pattern.face)
  const fromOutside = beyond(reachDown(pattern.diameter, recess, inside))
  const depth = part.can.height.value - recess - sunk(part, far)
  const fromInside = isWhole(part.can[far])
    ? pattern.holes.length
    : beyond(reachDown(pattern.diameter, depth, inside))
  const where = { part: name, opening }
  const what = `the ${namedOpenings(pattern, opening, name)}`
  if (fromOutside > 0 && fromInside > 0)
    return [
      warn(
        'drill.cannot-reach',
        where,
        `A drill does not reach ${fromOutside} of ${what}: the end lies ${long(recess)} deep.`,
        'Use a long bit or an extension, or punch those holes.',
      ),
    ]
  if (fromOutside > 0 || fromInside === 0) return []
  const all = fromInside === pattern.holes.length
  return [
    note(
      'drill.from-outside',
      where,
      `From inside the can, ${long(depth)} deep, a drill does not reach ${all ? what : `${fromInside} of ${what}`}: ${all ? 'it does not go in so far' : 'the chuck meets the wall'}.`,
      `Turn the can over and drill from outside, with a block of wood inside to hold the tin up.`,
    ),
  ]
}

/** How deep a step drill stands in the can when it has reached a diameter [m]. */
export const stepDepth = (diameter: number): number =>
  ((diameter - DRILL.stepStart.value) / DRILL.stepRise.value + 1) * DRILL.stepLength.value

/** A step drill goes on into the can; its tip must not meet the far wall first. */
const farWall = (placed: PlacedCan, opening: string, row: RowOpening): readonly Finding[] => {
  const { hole } = row
  const diameter =
    hole.shape === 'round' ? hole.diameter : hole.shape === 'window' && hole.foot === 'round' ? hole.width : 0
  if (diameter <= DRILL.chuckCapacity.value) return []
  const room = narrowestInside(placed.part.can).value
  const depth = stepDepth(diameter)
  if (depth <= room) return []
  return [
    warn(
      'drill.far-wall',
      { part: placed.name, opening },
      `A step drill stands about ${long(depth)} deep in the can when it has cut ${long(diameter)} in ${called(opening)} on ${called(placed.name)}; the far wall is ${long(room)} away.`,
      'Drill them as far as the step drill goes and open them with a round file, or use a hole saw.',
    ),
  ]
}

const tooSmall = (
  part: string,
  opening: string,
  what: RowOpening | PatternOpening,
  sheet: number,
): readonly Finding[] => {
  const diameter =
    what.kind === 'pattern' ? what.diameter : what.hole.shape === 'round' ? what.hole.diameter : null
  const least = Math.max(sheet, TIN.smallestHole.value)
  if (diameter === null || diameter >= least - 1e-9) return []
  return [
    warn(
      'drill.too-small',
      { part, opening },
      says(
        what,
        opening,
        part,
        `are finer than the ${long(least)} that a bit drills cleanly in this tin, and soot closes such holes.`,
      ),
      `Make them ${long(least)} or larger.`,
    ),
  ]
}

/** Holes that a hand drill cannot reach or cannot make. */
export const drillReach: Check = ({ placed }) => [
  ...placed
    .filter(isCan)
    .flatMap((can) =>
      [...can.part.openings].flatMap(([name, opening]) =>
        opening.kind === 'pattern'
          ? endPattern(can, name, opening)
          : opening.kind === 'row'
            ? farWall(can, name, opening)
            : [],
      ),
    ),
  ...placed.flatMap(({ name, part }) => {
    return [...part.openings].flatMap(([opening, what]) => {
      if (what.kind !== 'row' && what.kind !== 'pattern') return []
      const sheet =
        part.form !== 'can' ? part.thickness : what.kind === 'row' ? part.can.bodyWall : part.can.endWall
      return tooSmall(name, opening, what, sheet)
    })
  }),
]
