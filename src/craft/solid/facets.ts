/**
 * Round things are drawn with flat facets whose corners lie on the true surface. How far a facet's middle lies inside
 * of it, the chordal error, is chosen; the number of facets follows.
 */
export interface FacetOptions {
  /** Largest chordal error [mm]. */
  readonly chord: number
}

/** A twentieth of a millimetre: no printer or eye tells it from round. */
export const DEFAULT_FACETS: FacetOptions = { chord: 0.05 }

/** Fewer look like nuts, and would show as edges in a drawing. */
const FEWEST = 24
/** More only cost time. */
const MOST = 720

/**
 * Facets all the way round a circle [1]. Of a regular n-gon the middle of a side lies r (1 − cos(π/n)) inside its
 * circle. A multiple of four, so that corners lie on both axes and a cut through the axis meets corners.
 */
export const facetsRound = (radius: number, { chord }: FacetOptions): number => {
  const wanted = chord >= radius ? FEWEST : Math.PI / Math.acos(1 - chord / radius)
  return Math.min(MOST, Math.max(FEWEST, 4 * Math.ceil(wanted / 4)))
}

/** Area of a regular n-gon over that of the circle through its corners, sin(2π/n)/(2π/n) [1]. */
export const facetShare = (facets: number): number => {
  const angle = (2 * Math.PI) / facets
  return Math.sin(angle) / angle
}
