/** A place on the stage [px]. */
interface Place {
  readonly x: number
  readonly y: number
}

/** Of a handle with nothing beside it, and of one in a crowd: its own knob at the least [px]. */
export const LARGEST_REACH = 20
export const SMALLEST_REACH = 7

/**
 * How far from its middle a press still means a handle [px]: half way to the nearest other one, so that a press on a knob
 * never takes its neighbour, which lies over it.
 */
export const reachesOf = (places: readonly Place[]): readonly number[] =>
  places.map((here) => {
    const nearest = places.reduce(
      (least, other) =>
        other === here ? least : Math.min(least, Math.hypot(other.x - here.x, other.y - here.y)),
      Number.POSITIVE_INFINITY,
    )
    return Math.min(LARGEST_REACH, Math.max(SMALLEST_REACH, nearest / 2))
  })
