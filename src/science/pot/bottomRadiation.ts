import { blackEmission, exchangeArea } from '#science/heat/greyRadiation.ts'

/** Something hot that the bottom sees: glowing char through the bore, the stand's inside. */
export interface HotBody {
  /** [K] */
  readonly temperature: number
  /** [m²] */
  readonly area: number
  readonly emissivity: number
  /** Share of what leaves it that reaches the bottom [1]. */
  readonly viewOfPot: number
}

/**
 * Share of a flame's radiation that falls on the bottom straight away [1]. The flame is taken as a line of
 * even strength on the axis, from its root `gap` below the bottom up by its height, shining alike to all
 * sides; the disc covers ½(1 − z/√(z² + R²)) of the sphere from a distance z, and the mean of that over the
 * line is closed. What is left of a flame that strikes spreads under the bottom and gives it half. Derived
 * here; thin flame, no soot cloud between.
 */
export const flameShareOnBottom = (gap: number, flameHeight: number, potRadius: number): number => {
  if (!(flameHeight > 0)) return 0
  const length = Math.min(gap, flameHeight)
  const top = gap - length
  // (√(gap² + R²) − √(top² + R²))/length, without the difference that loses digits for a short flame.
  const under = 0.5 * (1 - (gap + top) / (Math.hypot(gap, potRadius) + Math.hypot(top, potRadius)))
  const below = length / flameHeight
  return below * under + (1 - below) * 0.5
}

/**
 * Radiation that the bottom takes up from a flame and from hot bodies, less what it sends back to those [W].
 */
export const bottomRadiation = (
  flameRadiation: number,
  flameShare: number,
  bodies: readonly HotBody[],
  bottomArea: number,
  bottomEmissivity: number,
  bottom: number,
): number => {
  let heat = bottomEmissivity * flameRadiation * flameShare
  for (const { temperature, area, emissivity, viewOfPot } of bodies)
    heat +=
      exchangeArea(area, emissivity, bottomArea, bottomEmissivity, viewOfPot) *
      (blackEmission(temperature) - blackEmission(bottom))
  return heat
}
