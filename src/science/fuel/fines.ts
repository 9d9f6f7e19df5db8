/** Most fines that were measured, by weight [1]. */
export const MOST_FINES = 0.2

/**
 * How many times more a bed resists with a share of fines in it than without, at the same void of its whole pieces [1].
 *
 * Yazdanpanah et al., Bioresour. Technol. 101 (2010) 5565 [bib:yazdanpanah2010]: 6 mm pellets and what passes a 4 mm
 * screen; at 0.357 m/s 10 % of fines make it ×4 (1100 over 271 Pa/m) and 20 % ×6.6 (1800 over 271). The curve is the
 * parabola through these and 1, rising all the way; 0–20 %. At 0.004 m/s the paper has ×2.5 and ×4.2, but its clean
 * bed there is 2.5 times what Ergun's equation gives, so that end is not used. Other fuels by analogy.
 */
export const finesFactor = (share: number): number => 1 + 32 * share - 20 * share * share
