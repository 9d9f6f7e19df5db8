import type { Metres } from '#basis/units.ts'
import type { Layer, Point, Shape } from '../drawing.ts'

/**
 * A wall rolled out flat. `along` runs from the join at the left end all the way round and is measured at the
 * lower edge; `up` runs up the paper from there, along the wall. Millimetres.
 */
export interface Development {
  /** All the way round at the lower edge. */
  readonly length: number
  /** From the lower to the upper edge, along the wall. */
  readonly height: number
  /** Whether the wall tapers, so that its edges are arcs. */
  readonly isTapered: boolean
  /** All the way round, so far up the paper. */
  readonly roundAt: (up: number) => number
  /** How far up the paper a height above the part's bottom edge lies. */
  readonly upOf: (height: Metres) => number
  readonly at: (along: number, up: number) => Point
  /** How far "up" is turned from the drawing's own, anticlockwise [deg]. */
  readonly turnAt: (along: number) => number
  /** A line round the wall. */
  readonly round: (layer: Layer, up: number, from: number, to: number) => Shape
  /** The other way: where a point of the drawing lies. */
  readonly placeOf: (point: Point) => { readonly along: number; readonly up: number }
}

/** A wall to roll out: the body it lies on, and what is laid on it. */
export interface Wall {
  /** Outside of the body at the sheet's lower and upper edge [m]. */
  readonly lowDiameter: Metres
  readonly highDiameter: Metres
  /** Those edges above the part's bottom edge, upright [m]. */
  readonly low: Metres
  readonly high: Metres
  /** Of the sheet that goes round it [m]. */
  readonly thickness: Metres
}

/** Two diameters closer than this are those of a cylinder [m]: over a can it turns an edge by less than a hair. */
const SAME_DIAMETER = 1e-6

/**
 * Length of a sheet of the given thickness once round a cylinder, measured where bending neither
 * stretches nor squeezes it: halfway through, at the diameter plus one thickness (half of it on either
 * side). Of 0.1 mm paper that adds π × 0.1 mm = 0.31 mm to the can's own circumference, and a hole
 * marked on the flat paper lands at its true bearing. [m]
 */
export const lengthRound = (diameter: Metres, thickness: Metres): Metres =>
  (Math.PI * (diameter + thickness)) as Metres

const cylinder = ({ lowDiameter, low, high, thickness }: Wall): Development => {
  const length = lengthRound(lowDiameter, thickness) * 1000
  return {
    length,
    height: (high - low) * 1000,
    isTapered: false,
    roundAt: () => length,
    upOf: (height) => (height - low) * 1000,
    at: (along, up) => ({ x: along, y: up }),
    turnAt: () => 0,
    round: (layer, up, from, to) => ({
      kind: 'line',
      layer,
      from: { x: from, y: up },
      to: { x: to, y: up },
    }),
    placeOf: ({ x, y }) => ({ along: x, up: y }),
  }
}

/**
 * A truncated cone rolls out to a sector of a ring about the point where its sides would meet. With α between
 * its side and its axis, what lies at radius R on it lies at R / sin α from that point, and a whole turn is
 * 2π sin α there. The sheet is measured halfway through, half a thickness off the wall and square to it,
 * where the radius is R + t/2 cos α. A wall that narrows upwards has a negative α: its apex lies above.
 */
const cone = ({ lowDiameter, highDiameter, low, high, thickness }: Wall): Development => {
  const [rise, widening] = [high - low, (highDiameter - lowDiameter) / 2]
  const slant = Math.hypot(rise, widening)
  const [sin, cos] = [widening / slant, rise / slant]
  const lowRadius = (lowDiameter / 2 + (thickness / 2) * cos) * 1000
  const length = 2 * Math.PI * lowRadius
  // From the apex to the lower edge, negative where the apex is above.
  const reach = lowRadius / sin
  const angleOf = (along: number): number => (along / length - 0.5) * 2 * Math.PI * sin
  const apex: Point = { x: length / 2, y: -reach }
  const at = (along: number, up: number): Point => ({
    x: apex.x + (reach + up) * Math.sin(angleOf(along)),
    y: apex.y + (reach + up) * Math.cos(angleOf(along)),
  })
  const fromApex = ({ x, y }: Point): number => (Math.atan2(y - apex.y, x - apex.x) * 180) / Math.PI
  return {
    length,
    height: slant * 1000,
    isTapered: true,
    roundAt: (up) => 2 * Math.PI * (reach + up) * sin,
    upOf: (height) => ((height - low) / cos) * 1000,
    at,
    turnAt: (along) => (-angleOf(along) * 180) / Math.PI,
    round: (layer, up, from, to) => {
      const [a, b] = [fromApex(at(from, up)), fromApex(at(to, up))]
      const [start, end] = sin > 0 ? [b, a] : [a, b]
      const turned = end < start ? end + 360 : end
      return { kind: 'arc', layer, centre: apex, radius: Math.abs(reach + up), from: start, to: turned }
    },
    placeOf: (point) => {
      const sign = Math.sign(sin)
      const [dx, dy] = [(point.x - apex.x) * sign, (point.y - apex.y) * sign]
      return {
        along: (Math.atan2(dx, dy) / (2 * Math.PI * sin) + 0.5) * length,
        up: sign * Math.hypot(dx, dy) - reach,
      }
    },
  }
}

/** Rolls out a wall, exactly [mm]. */
export const develop = (wall: Wall): Development =>
  Math.abs(wall.highDiameter - wall.lowDiameter) < SAME_DIAMETER ? cylinder(wall) : cone(wall)
