/** Where one looks from: turned about the stove's axis, over the horizon, so much nearer [rad, rad, 1]. */
export interface Orbit {
  readonly turn: number
  readonly tilt: number
  readonly zoom: number
}

/** From the front, a little to the side and from above: as the plan's own pictures. */
export const FIRST_ORBIT: Orbit = { turn: (28 * Math.PI) / 180, tilt: (22 * Math.PI) / 180, zoom: 1 }

/** From straight under the ground to straight above. */
const LEAST_TILT = -0.5
const MOST_TILT = Math.PI / 2 - 0.01
const LEAST_ZOOM = 0.6
const MOST_ZOOM = 5

const between = (least: number, value: number, most: number): number => Math.min(most, Math.max(least, value))

export const turnedBy = (
  { turn, tilt, zoom }: Orbit,
  by: { readonly turn?: number; readonly tilt?: number },
): Orbit => ({
  turn: (turn + (by.turn ?? 0)) % (2 * Math.PI),
  tilt: between(LEAST_TILT, tilt + (by.tilt ?? 0), MOST_TILT),
  zoom,
})

export const zoomedBy = (orbit: Orbit, factor: number): Orbit => ({
  ...orbit,
  zoom: between(LEAST_ZOOM, orbit.zoom * factor, MOST_ZOOM),
})

/** Half a turn over the width of the picture: what is under the finger stays about under it. */
export const draggedBy = (orbit: Orbit, across: number, down: number, width: number): Orbit =>
  turnedBy(orbit, {
    turn: (Math.PI * across) / Math.max(width, 1),
    tilt: (Math.PI * down) / Math.max(width, 1),
  })

const STEP = Math.PI / 18

/** What a key does, or null for one that is not ours. */
export const keyed = (orbit: Orbit, key: string): Orbit | null => {
  switch (key) {
    case 'ArrowLeft':
      return turnedBy(orbit, { turn: -STEP })
    case 'ArrowRight':
      return turnedBy(orbit, { turn: STEP })
    case 'ArrowUp':
      return turnedBy(orbit, { tilt: STEP })
    case 'ArrowDown':
      return turnedBy(orbit, { tilt: -STEP })
    case '+':
    case '=':
      return zoomedBy(orbit, 1.2)
    case '-':
      return zoomedBy(orbit, 1 / 1.2)
    case 'Home':
    case '0':
      return FIRST_ORBIT
    default:
      return null
  }
}

/** Bearing that one looks from, clockwise from the stove's front [deg]. */
export const bearingOf = ({ turn }: Orbit): number => {
  const degrees = Math.round((turn * 180) / Math.PI) % 360
  return degrees < 0 ? degrees + 360 : degrees
}
