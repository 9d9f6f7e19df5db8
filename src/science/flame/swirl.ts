/**
 * Swirl number of flat vanes in a ring: angular momentum over axial momentum times the outer radius [1]. S =
 * ⅔ (1 − k³)/(1 − k²) tan θ, Beér & Chigier 1972 [bib:beer1972]; k hub over outer radius, 0 ≤ k < 1; θ from
 * the axis [deg], 0 ≤ θ < 90. Guided flow and one axial speed are assumed: short tongues turn the gas less.
 */
export const swirlNumber = (hubRatio: number, angle: number): number =>
  // (1 − k³)/(1 − k²) = (1 + k + k²)/(1 + k), which does not divide by zero at k = 1.
  ((2 / 3) * (1 + hubRatio + hubRatio * hubRatio) * Math.tan((angle * Math.PI) / 180)) / (1 + hubRatio)

/**
 * Angle from the axis at which gas leaves under a tongue bent out of a disc [deg]. The gas follows the
 * tongue: nearly flat, it sends the gas round; upright, it lets it pass straight.
 */
export const outflowAngle = (tongueAngle: number): number => 90 - tongueAngle

/**
 * Swirl number of vanes together with a plain bore in the same disc [1]. Both pass gas at one speed, driven
 * by one pressure: axial momentum A_v cos θ from the vanes' free area and A_b from the bore, angular momentum
 * from the vanes only. Derived here.
 */
export const swirlWithBore = (
  vanesAlone: number,
  angle: number,
  vaneArea: number,
  boreArea: number,
): number => {
  const axial = vaneArea * Math.cos((angle * Math.PI) / 180)
  return (vanesAlone * axial) / (axial + boreArea)
}

/**
 * Above a swirl number of about 0.6 (`swirlForRecirculation`) hot gas flows back along the axis and holds the
 * flame.
 */
export const recirculates = (swirl: number, threshold: number): boolean => swirl > threshold
