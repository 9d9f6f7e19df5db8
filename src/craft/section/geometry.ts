import { good, type Outcome } from '#basis/problem.ts'
import { type PlacedPart, placeParts } from '#stove/assembly/place.ts'
import { potPlace } from '#stove/assembly/pot.ts'
import { profileOf } from '#stove/assembly/profile.ts'
import type { CanEnd, Stove } from '#stove/model.ts'
import { type BedMoment, type CutBed, cutBed } from './bed.ts'
import { type FarHole, farHoles, hiddenWithin } from './beyond.ts'
import { mm } from './half.ts'
import { type CutPlate, cutPlates } from './plates.ts'
import type { Span } from './span.ts'
import { type CutWall, cutWalls } from './walls.ts'

/**
 * A stove cut down its centre line, at true scale: what is cut and what is seen behind. Nothing of paper, colour or
 * pixels. Walls and plates are one half of the picture and stand for both; millimetres.
 */
export interface SectionGeometry {
  readonly stove: Stove
  readonly placed: readonly PlacedPart[]
  readonly walls: readonly CutWall[]
  readonly plates: readonly CutPlate[]
  readonly farHoles: readonly FarHole[]
  /** Rims seen as level lines behind the cut. */
  readonly rims: readonly Rim[]
  readonly bed: CutBed | null
  readonly pot: CutPot | null
  /** Outermost tin, pot left out. */
  readonly radius: number
  /** Highest tin, pot left out. */
  readonly top: number
}

export interface Rim extends Span {
  readonly z: number
}

/** The lower part of the pot: how tall it is nobody has said. */
export interface CutPot {
  readonly radius: number
  readonly bottom: number
}

const isOpenRim = (end: CanEnd): boolean => end.kind === 'open' || end.kind === 'cut'

const rimsOf = (placed: readonly PlacedPart[], walls: readonly CutWall[]): readonly Rim[] =>
  placed.flatMap(({ name, part }) => {
    const wall = walls.find((one) => one.part === name)
    if (part.form !== 'can' || wall === undefined) return []
    const heights = [
      ...(isOpenRim(part.can.bottom) ? [wall.reach.from] : []),
      ...(isOpenRim(part.can.top) ? [wall.reach.to] : []),
    ]
    return heights.map((z) => ({ z, from: hiddenWithin(walls, wall, z), to: wall.radius }))
  })

/** The pot as drawn; a stove built for none, or one it would only close, shows none. */
const potOn = (stove: Stove, placed: readonly PlacedPart[]): CutPot | null => {
  const pot = potPlace(stove, placed)
  return pot === null ? null : { radius: mm(pot.diameter) / 2, bottom: mm(pot.bottom) }
}

/**
 * Cuts a stove open. `frontPosition` is 0 when just lit, 1 when the front is at the floor. Refuses what `placeParts`
 * refuses; a stove read from a file never fails here.
 */
export const sectionGeometry = (
  stove: Stove,
  frontPosition = 0,
  moment: BedMoment = {},
): Outcome<SectionGeometry> => {
  const outcome = placeParts(stove)
  if (!outcome.ok) return outcome
  const placed = outcome.value
  const walls = cutWalls(placed)
  const plates = cutPlates(placed, profileOf(placed))
  const bed = cutBed(stove, placed, frontPosition, moment)
  const fuel = bed === null ? null : { part: bed.part, reach: { from: bed.floor, to: bed.top } }
  return good({
    stove,
    placed,
    walls,
    plates,
    farHoles: farHoles(placed, walls, fuel),
    rims: rimsOf(placed, walls),
    bed,
    pot: potOn(stove, placed),
    radius: Math.max(
      ...walls.flatMap(({ radius, thickness, seams }) => [
        radius + thickness / 2,
        ...seams.map(({ outer }) => outer),
      ]),
      ...plates.map(({ reach }) => reach.to),
    ),
    top: Math.max(...placed.map(({ top }) => mm(top))),
  })
}
