import { randomStream } from '#basis/random.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import { fuelBedOf } from '#stove/measure/fuelBed.ts'
import type { FuelCharge, Stove } from '#stove/model.ts'
import { mm } from './half.ts'
import { type FuelPiece, fuelPieces, pieceReach } from './pieces.ts'

/** The fuel in its can at one moment. Heights above the ground [mm]. */
export interface CutBed {
  readonly part: string
  readonly radius: number
  readonly floor: number
  /** Fuel line before it was lit. */
  readonly filledTo: number
  /** Raw fuel reaches up to here, char lies above. */
  readonly front: number
  /** Char sinks as the front passes. */
  readonly top: number
  /** Pieces that the front is in the middle of are in both. */
  readonly raw: readonly FuelPiece[]
  readonly char: readonly FuelPiece[]
}

/**
 * Depth of the char layer over that of the raw fuel it came from, and size of a piece of char over the raw piece [1]:
 * medians of the model's coefficients charSettle and charShrink, from memory.
 */
const CHAR_SETTLES_TO = 0.75
const CHAR_SHRINKS_TO = 0.85

/** Whether the front has begun to eat its way down. */
export const isLit = ({ front, filledTo }: CutBed): boolean => filledTo - front > 1e-6

/** The pieces lie the same way in every picture, so that only what changes moves. */
const SEED = 7

/** Where the pieces of a bed of a radius and depth lie, middle of its floor at the origin [mm]. */
export type LayPieces = (fuel: FuelCharge, radius: number, depth: number) => readonly FuelPiece[]

export const layPieces: LayPieces = (fuel, radius, depth) =>
  fuelPieces(fuel, radius, depth, randomStream(SEED))

/** What is known of a moment of a bed besides where its front is. */
export interface BedMoment {
  /** Whoever draws many moments of one bed lays its pieces once. */
  readonly pieces?: LayPieces
  /** Of the char that there is at most, how much is left: it burns away from the top [1]. */
  readonly charShare?: number
}

/**
 * The fuel bed with its front at a position from 0 (just lit) to 1 (at the floor); null where the stove has no place
 * for fuel.
 */
export const cutBed = (
  stove: Stove,
  placed: readonly PlacedPart[],
  position: number,
  { pieces: lay = layPieces, charShare = 1 }: BedMoment = {},
): CutBed | null => {
  const bed = fuelBedOf(stove, placed)
  if (bed === null) return null
  const floor = mm(bed.floor)
  const filledTo = Math.min(mm(bed.top), mm(bed.can.top))
  const radius = mm(bed.can.part.can.bodyDiameter.value) / 2 - mm(bed.can.part.can.bodyWall)
  const depth = filledTo - floor
  const front = floor + depth * (1 - Math.min(1, Math.max(0, position)))
  const pieces = lay(stove.fuel, radius, depth).map((piece) => ({
    ...piece,
    middle: { x: piece.middle.x, z: piece.middle.z + floor },
  }))
  const settled = (piece: FuelPiece): FuelPiece => ({
    ...piece,
    middle: { x: piece.middle.x, z: front + (piece.middle.z - front) * CHAR_SETTLES_TO },
    length: piece.length * CHAR_SHRINKS_TO,
    width: piece.width * CHAR_SHRINKS_TO,
  })
  return {
    part: bed.can.name,
    radius,
    floor,
    filledTo,
    front,
    top: front + (filledTo - front) * CHAR_SETTLES_TO * charShare,
    raw: pieces.filter((piece) => piece.middle.z - pieceReach(piece) <= front),
    char: pieces.filter((piece) => piece.middle.z + pieceReach(piece) > front).map(settled),
  }
}
