import type { PassageShape } from '#science/draft/resistance.ts'
import type { FuelPieces } from '#stove/model.ts'
import { crossSection } from './pieces.ts'

/** What a bed puts in the way of a flow: Δp/L = viscous·μ·u + inertial·ρ·u², u the superficial velocity. */
export interface BedResistance {
  /** [1/m²] */
  readonly viscous: number
  /** [1/m] */
  readonly inertial: number
}

/**
 * Pieces tipped in: Ergun's equation on the Sauter diameter [m] [bib:ergun1952]. Tested for 1 < Re/(1 − ε) < 2500 and
 * void 0.36–0.92.
 */
export const tippedResistance = (voidFraction: number, sauterDiameter: number): BedResistance => {
  const solid = 1 - voidFraction
  const void3 = voidFraction ** 3
  return {
    viscous: (150 * solid * solid) / (void3 * sauterDiameter * sauterDiameter),
    inertial: (1.75 * solid) / (void3 * sauterDiameter),
  }
}

/**
 * Kozeny's constant of the channels between sticks that stand at random in a can: Δp/L = k μ u a²(1 − ε)²/ε³ with `a`
 * the wetted perimeter over the area of a stick. Derived here by solving the laminar profile in random stands of equal
 * round rods, 7 to 12 rods across the can, void 0.25–0.5: means of 0.5 to 0.9, single stands 0.33 to 1.5
 * (test/reference/standingSticks.json). A single round channel has 2 and an even spacing of rods 3 to 4, because there
 * all channels are alike; between rods that stand as they come, the widest gaps carry nearly all of the air.
 */
const STANDING_KOZENY = 0.75

/** Loss at the ends of a stick's length, on the velocity between the sticks: 0.5 in and 1 out, from memory [1]. */
const STANDING_END_LOSS = 1.5

/**
 * Sticks stood upright: developed laminar flow along them, and the loss in and out of each layer. Assumes that sticks
 * are straight and alike, that layers do not close each other's gaps, and that the flow is laminar (Re below 2000 on
 * the hydraulic diameter; a natural draught makes 20 to 200). From one stand to the next it is out by up to a factor of two.
 */
export const standingResistance = (
  voidFraction: number,
  pieces: FuelPieces,
  layerHeight: number,
): BedResistance => {
  const { area, perimeter } = crossSection(pieces)
  const wetted = (perimeter / area) * (1 - voidFraction)
  return {
    viscous: (STANDING_KOZENY * wetted * wetted) / voidFraction ** 3,
    inertial: STANDING_END_LOSS / (2 * voidFraction * voidFraction * layerHeight),
  }
}

/** A depth of such a bed across an area, as a passage of the draught network. */
export const bedPassage = (
  { viscous, inertial }: BedResistance,
  area: number,
  depth: number,
): PassageShape => ({
  viscous: (viscous * depth) / area,
  inertial: (inertial * depth) / (area * area),
})
