import { toMillimetres, toRadians } from '#basis/units.ts'
import type { VanesOpening } from '#stove/model.ts'
import { tongueSide } from '../flat/vanes.ts'
import type { Own, Solid, SolidKernel } from './kernel.ts'

/** What snips and a chisel leave open round a tongue [mm]; from memory. It keeps a tongue free of the tin beside it. */
export const KERF = 0.1

/** What bending the vanes of a face takes out of the flat tin and puts back in. */
export interface BentVanes {
  readonly cut: readonly Solid[]
  readonly tongues: readonly Solid[]
}

/**
 * The tongues of a ring of vanes: each turned about its hinge edge, with the tin's thickness, the window it leaves open.
 * Bent up it turns about the hinge in the lower face, bent down about the one in the upper face, so that it stays joined to
 * the disc all along. Tongues that are not bent leave the disc whole. The face lies from `bottom` to `top` [mm].
 */
export const bentVanes = (
  { Manifold }: SolidKernel,
  own: Own,
  vanes: VanesOpening,
  bottom: number,
  top: number,
): BentVanes => {
  if (vanes.angle === 0) return { cut: [], tongues: [] }
  const inner = toMillimetres(vanes.innerRadius)
  const length = toMillimetres(vanes.outerRadius) - inner
  const width = toMillimetres(vanes.width)
  const tin = top - bottom
  // Along the hinge is x; across it y, anticlockwise seen from above; the tin z.
  const across = tongueSide(vanes) === 'anticlockwise' ? 1 : -1
  const slab = (l: number, w: number, t: number): Solid =>
    own(own(Manifold.cube([l, w, t])).translate(0, across === 1 ? 0 : -w, 0))
  const window = own(own(slab(length, width, 3 * tin)).translate(inner, 0, bottom - tin))
  const upwards = vanes.bend === 'up'
  const flat = own(slab(length - 2 * KERF, width - KERF, tin).translate(inner + KERF, 0, upwards ? 0 : -tin))
  const turn = (upwards ? 1 : -1) * across * vanes.angle
  const bent = own(own(flat.rotate(turn, 0, 0)).translate(0, 0, upwards ? bottom : top))
  const round = (solid: Solid): readonly Solid[] =>
    Array.from({ length: vanes.count }, (_, index) =>
      own(solid.rotate(0, 0, 90 - (vanes.bearing + (360 * index) / vanes.count))),
    )
  return { cut: round(window), tongues: round(bent) }
}

/** How far a bent tongue reaches beyond the face it is bent from [mm]. */
export const tongueReach = (vanes: VanesOpening, tin: number): number => {
  const angle = toRadians(vanes.angle)
  const reach = toMillimetres(vanes.width) * Math.sin(angle) + tin * Math.cos(angle) - tin
  return vanes.angle === 0 ? 0 : Math.max(0, reach)
}
