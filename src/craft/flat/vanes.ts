import { toMillimetres } from '#basis/units.ts'
import type { VanesOpening } from '#stove/model.ts'
import type { Point, Shape } from '../drawing.ts'

/** Turns a radius [mm] and a bearing [deg] into a point of the drawing. */
export type Polar = (radius: number, bearing: number) => Point

/**
 * Which side of its hinge a tongue lies on, seen from above. Gas that rises through the slit slides along
 * the sloped tongue towards the tongue's free edge if it was bent up, and towards the hinge if it was bent
 * down; so a tongue bent up turns the gas the way from hinge to free edge, one bent down the other way.
 */
export const tongueSide = ({ bend, hand }: VanesOpening): 'clockwise' | 'anticlockwise' =>
  (bend === 'up') === (hand === 'clockwise') ? 'clockwise' : 'anticlockwise'

export interface FlatVane {
  /** Along the hinge, inner end first. */
  readonly hinge: readonly [Point, Point]
  /** Three cuts: out from the hinge's inner end, along the free edge, back to its outer end. */
  readonly cut: readonly [Point, Point, Point, Point]
}

/**
 * The tongues of a ring of vanes, flat. The hinge is a piece of radius; the free edge runs beside it at
 * the tongue's width, so a tongue has square corners and equal width all along.
 */
export const flatVanes = (vanes: VanesOpening, at: Polar): readonly FlatVane[] => {
  const inner = toMillimetres(vanes.innerRadius)
  const outer = toMillimetres(vanes.outerRadius)
  const width = toMillimetres(vanes.width)
  const side = tongueSide(vanes) === 'clockwise' ? 90 : -90
  return Array.from({ length: vanes.count }, (_, index) => {
    const bearing = vanes.bearing + (360 * index) / vanes.count
    const centre = at(0, 0)
    const aside = at(width, bearing + side)
    const step = { x: aside.x - centre.x, y: aside.y - centre.y }
    const beside = (point: Point): Point => ({ x: point.x + step.x, y: point.y + step.y })
    const [from, to] = [at(inner, bearing), at(outer, bearing)]
    return { hinge: [from, to], cut: [from, beside(from), beside(to), to] }
  })
}

export const vaneShapes = ({ hinge, cut }: FlatVane): readonly Shape[] => [
  { kind: 'polyline', layer: 'cut', closed: false, points: cut },
  { kind: 'line', layer: 'fold', from: hinge[0], to: hinge[1] },
]
