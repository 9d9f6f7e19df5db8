/**
 * A general network of chambers (nodes) joined by passages (links) that carry mass. Nothing here knows what a
 * stove is. Every passage obeys one law, which is exact for laminar slots, Ergun beds and orifices with a creeping
 * term alike: driving pressure = linear·ṁ + quadratic·ṁ·|ṁ|.
 *
 * Node numbers run from 0; `OUTSIDE` (−1) is the open air at gauge pressure 0. A link's flow is positive from `from`
 * to `to`. Its driving pressure is p(from) − p(to) + head, where head carries buoyancy and wind [Pa]. `gain` is the
 * mass that reaches `to` for each kilogram that enters at `from` (above 1 where fuel turns to gas on the way); it
 * applies to forward flow only.
 */
export const OUTSIDE = -1

export interface Network {
  readonly nodes: number
  readonly links: number
  readonly from: Int32Array
  readonly to: Int32Array
  /** [Pa s/kg], above 0. */
  readonly linear: Float64Array
  /** [Pa s²/kg²], 0 or more. */
  readonly quadratic: Float64Array
  /** [Pa] */
  readonly head: Float64Array
  /** [1] */
  readonly gain: Float64Array
}

/** Room for a network of this size; the arrays are filled by the caller. */
export const emptyNetwork = (nodes: number, links: number): Network => ({
  nodes,
  links,
  from: new Int32Array(links),
  to: new Int32Array(links),
  linear: new Float64Array(links),
  quadratic: new Float64Array(links),
  head: new Float64Array(links),
  gain: new Float64Array(links).fill(1),
})

/** Flow through one link for a driving pressure; smooth, odd and rising [kg/s]. */
export const linkFlow = (linear: number, quadratic: number, drive: number): number =>
  (2 * drive) / (linear + Math.sqrt(linear * linear + 4 * quadratic * Math.abs(drive)))

/** Derivative of `linkFlow` by the driving pressure, always above 0 [kg/(s Pa)]. */
export const linkConductance = (linear: number, quadratic: number, drive: number): number =>
  1 / Math.sqrt(linear * linear + 4 * quadratic * Math.abs(drive))
