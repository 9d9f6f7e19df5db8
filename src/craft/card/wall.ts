import { toRadians } from '#basis/units.ts'
import { isSeamed, outsideAt } from '#stove/can/ends.ts'
import { bodyAtEnd } from '#stove/can/taper.ts'
import type { BandPart, CanPart, RowOpening } from '#stove/model.ts'
import { wrapBearing } from '#stove/opening/row.ts'
import type { NamedRow } from '../flat/strip.ts'
import { rowsOf } from '../flat/wrap.ts'
import { flatOutline } from '../section/beyond.ts'
import { mm } from '../section/half.ts'

/** An upright wall as someone who stands before it sees it: x from the axis to the right, z up [mm]. */
export interface Wall {
  /** Of the body's outside, at the lower and the upper edge. */
  readonly radius: { readonly bottom: number; readonly top: number }
  readonly height: number
  /** Double seams that stand out beyond the body. */
  readonly seams: readonly { readonly radius: number; readonly from: number; readonly to: number }[]
  readonly beads: readonly { readonly from: number; readonly to: number }[]
  readonly rows: readonly NamedRow[]
}

export const canWallOf = ({ can, openings }: CanPart): Wall => {
  const height = mm(can.height.value)
  const high = mm(can.seamHeight)
  const body = (which: 'bottom' | 'top'): number => mm(bodyAtEnd(can, which).value) / 2
  const over = (which: 'bottom' | 'top'): number => mm(outsideAt(can, which).value) / 2
  return {
    radius: { bottom: body('bottom'), top: body('top') },
    height,
    seams: [
      ...(isSeamed(can.bottom) ? [{ radius: over('bottom'), from: 0, to: high }] : []),
      ...(isSeamed(can.top) ? [{ radius: over('top'), from: height - high, to: height }] : []),
    ],
    beads: can.beads.map(({ from, to }) => ({ from: mm(from), to: mm(to) })),
    rows: rowsOf(openings),
  }
}

/** A band bent round a can whose body has the given radius [mm]. */
export const bandWallOf = (part: BandPart, bodyRadius: number): Wall => {
  const radius = bodyRadius + mm(part.thickness)
  return {
    radius: { bottom: radius, top: radius },
    height: mm(part.height),
    seams: [],
    beads: [],
    rows: rowsOf(part.openings),
  }
}

export const widest = ({ radius, seams }: Wall): number =>
  Math.max(radius.bottom, radius.top, ...seams.map((seam) => seam.radius))

export const radiusAt = ({ radius, height }: Wall, z: number): number =>
  radius.bottom + ((radius.top - radius.bottom) * Math.min(height, Math.max(0, z))) / height

/** Where the eye stands: before the first place that is left out, so that it is seen; else at the front [deg]. */
export const eyeFor = (rows: readonly NamedRow[]): number => {
  const row = rows.find((one) => one.row.leftOut.length > 0)?.row
  const position = row?.leftOut[0]
  return row === undefined || position === undefined ? 0 : placeBearing(row, position)
}

const placeBearing = (row: RowOpening, position: number): number =>
  wrapBearing(row.bearing + ((position - 1) * 360) / row.count)

export interface SeenHole {
  readonly position: number
  readonly leftOut: boolean
  readonly outline: readonly { readonly x: number; readonly z: number }[]
  readonly middle: { readonly x: number; readonly z: number }
}

/** A hole nearer to the edge of the view than this is seen too slantwise to be drawn [1]. */
const TOO_SLANT = 0.08

/** The places of a row on the near half of a wall, bent as the wall is. */
export const seenHoles = (wall: Wall, row: RowOpening, eye: number): readonly SeenHole[] => {
  const outline = flatOutline(row.hole)
  const z = mm(row.height)
  const radius = radiusAt(wall, z)
  const leftOut = new Set(row.leftOut)
  return Array.from({ length: row.count }, (_, i) => i + 1).flatMap((position) => {
    // Clockwise from above runs to the left of someone who faces the wall.
    const middle = -toRadians(wrapBearing(placeBearing(row, position) - eye) as never)
    if (Math.cos(middle) < TOO_SLANT) return []
    const at = (along: number): number =>
      radius * Math.sin(Math.max(-Math.PI / 2, Math.min(Math.PI / 2, turnOf(middle) + along / radius)))
    return [
      {
        position,
        leftOut: leftOut.has(position),
        // What runs over an edge ends there.
        outline: outline.map(([along, up]) => ({
          x: at(along),
          z: Math.max(0, Math.min(wall.height, z + up)),
        })),
        middle: { x: at(0), z },
      },
    ]
  })
}

/** The same angle between −π and π [rad]. */
const turnOf = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle))
