import type { Degrees, Metres } from '#basis/units.ts'
import type { Can } from '#stove/model.ts'
import { CAN_DEFAULTS } from './defaults.ts'
import { isSeamed } from './ends.ts'

/** A stretch of wall to keep holes away from; heights from the can’s bottom edge. */
export interface WallZone {
  readonly from: Metres
  readonly to: Metres
  readonly why: 'seam' | 'bead' | 'edge'
}

/**
 * Stretches of wall that are double seam, a rolled bead, or an edge [m]. A trimmed edge is a stretch of no height at
 * the edge itself; the bottom edge of a drawn can reaches up to the end of its rounded corner. From the
 * bottom up; stretches may touch.
 */
export const wallZones = (can: Can): readonly WallZone[] => {
  const height = can.height.value
  const zones: WallZone[] = can.beads.map(({ from, to }) => ({ from, to, why: 'bead' }))
  const end = (which: 'bottom' | 'top'): WallZone => {
    const { kind } = can[which]
    const reach = isSeamed(can[which])
      ? can.seamHeight
      : kind === 'drawn'
        ? CAN_DEFAULTS.drawnCorner.value
        : 0
    const why = isSeamed(can[which]) ? 'seam' : 'edge'
    return which === 'bottom'
      ? { from: 0 as Metres, to: reach as Metres, why }
      : { from: (height - reach) as Metres, to: height, why }
  }
  zones.push(end('bottom'), end('top'))
  return zones.sort((one, other) => one.from - other.from || one.to - other.to)
}

/** The stretches of wall that are double seam [m]. */
export const seamZones = (can: Can): readonly WallZone[] => wallZones(can).filter(({ why }) => why === 'seam')

/** Bearings the side seam takes up: from `from` clockwise to `to`, which may pass 360. */
export interface SideSeamZone {
  readonly from: Degrees
  readonly to: Degrees
}

/** Where the welded side seam runs, or null where there is none or nobody knows [deg]. */
export const sideSeamZone = (
  can: Can,
  width: Metres = CAN_DEFAULTS.sideSeamWidth.value,
): SideSeamZone | null => {
  if (can.sideSeam === null) return null
  const span = (width / (Math.PI * can.bodyDiameter.value)) * 360
  const from = (((can.sideSeam - span / 2) % 360) + 360) % 360
  return { from: from as Degrees, to: (from + span) as Degrees }
}

/**
 * From a bearing to the nearer edge of the side seam, along the outside of the body; 0 on the seam, null
 * where no seam is known [m].
 */
export const distanceToSideSeam = (
  can: Can,
  bearing: Degrees,
  width: Metres = CAN_DEFAULTS.sideSeamWidth.value,
): Metres | null => {
  if (can.sideSeam === null) return null
  const turn = (((bearing - can.sideSeam) % 360) + 360) % 360
  const arc = (Math.min(turn, 360 - turn) / 360) * Math.PI * can.bodyDiameter.value
  return Math.max(0, arc - width / 2) as Metres
}
