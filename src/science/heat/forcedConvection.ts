import type { ValidRange } from './range.ts'

export const LAMINAR_STREAM_RANGE: ValidRange = {
  of: 'laminar flow along a wall',
  quantity: 'Re',
  from: 0,
  to: 5e5,
}

/**
 * Mean Nusselt number of a wall that gas streams along, on its length [1]. Nu = 0.664 Re^½ Pr^⅓, Blasius and
 * Pohlhausen, any text; Pr ≥ 0.6, `LAMINAR_STREAM_RANGE`. Below Re about 100 it is low: the boundary layer is
 * no longer thin.
 */
export const laminarStreamNusselt = (reynolds: number, prandtl: number): number =>
  0.664 * Math.sqrt(reynolds) * Math.cbrt(prandtl)

/**
 * Two ways of convection that help each other: the cube root of the sum of their cubes, Incropera eq. 9.64
 * with n = 3, from memory (Churchill 1977). Takes Nusselt numbers on one length, or coefficients.
 */
export const together = (forced: number, free: number): number => Math.cbrt(forced ** 3 + free ** 3)
