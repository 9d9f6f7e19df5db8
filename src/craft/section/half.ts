/**
 * The section is a picture of the plane through the stove's axis. Most of it is alike on both sides, so it is
 * described once, as a half: r out from the axis, z up from the ground [mm].
 */
export interface HalfPoint {
  readonly r: number
  readonly z: number
}

/** Metres of the stove to millimetres of the section [mm]. */
export const mm = (metres: number): number => metres * 1000
