import type { FuelCharge } from '#stove/model.ts'
import { type LayPieces, layPieces } from './bed.ts'
import { type FuelPiece, pieceReach } from './pieces.ts'

/** Beds are laid this much deeper at a time, so that one that is filled up a little keeps its pieces [mm]. */
const ROUND_UP = 60

const sameFuel = (a: FuelCharge, b: FuelCharge): boolean =>
  a.kind === b.kind && a.packing === b.packing && a.own?.pieces === b.own?.pieces

/**
 * Lays the pieces of a bed once for as long as only its level and its front move: most of a picture's time goes into
 * finding them room. What stands out over the level is left out, so that a bed grows from its top.
 */
export const rememberPieces = (): LayPieces => {
  let last: {
    readonly fuel: FuelCharge
    readonly radius: number
    readonly depth: number
    readonly pieces: readonly FuelPiece[]
  } | null = null
  return (fuel, radius, depth) => {
    const whole = Math.ceil(depth / ROUND_UP) * ROUND_UP
    if (last === null || last.radius !== radius || last.depth !== whole || !sameFuel(last.fuel, fuel))
      last = { fuel, radius, depth: whole, pieces: layPieces(fuel, radius, whole) }
    return last.pieces.filter((piece) => piece.middle.z + pieceReach(piece) <= depth)
  }
}
