/**
 * View factors of round surfaces: the share of what leaves the first that reaches the second. Howell's
 * catalogue of radiation configuration factors [bib:howell2010], case numbers at the line, read in public
 * implementations and checked by direct integration (`test/reference/generators/viewFactors.py`). Diffuse
 * surfaces, nothing in between.
 */

/**
 * Two coaxial parallel discs of radii r₁, r₂ a gap apart, from the first to the second [1]. Case C-41; gap >
 * 0.
 */
export const discToDisc = (r1: number, r2: number, gap: number): number => {
  const a = (r1 / gap) ** 2
  const b = (r2 / gap) ** 2
  const x = 1 + (1 + b) / a
  // x − √(x² − 4b/a) loses digits for a small far disc: (x − y)(x + y) = 4b/a.
  const y = Math.sqrt(Math.max(0, x * x - (4 * b) / a))
  return (2 * b) / (a * (x + y))
}

/**
 * The closed end of a tube of radius r, to the tube's wall up to a height [1]. By closure with the disc at
 * that height.
 */
export const discToTube = (radius: number, height: number): number => 1 - discToDisc(radius, radius, height)

/** The inside of a tube of radius r and some height, to its own end disc [1]. By reciprocity. */
export const tubeToDisc = (radius: number, height: number): number =>
  (discToTube(radius, height) * radius) / (2 * height)

/** A ring between two coaxial tubes of one height: what each of its four surfaces sees. */
export interface RingView {
  readonly innerToOuter: number
  readonly outerToInner: number
  readonly outerToItself: number
  /** To one of the two open ends. */
  readonly innerToEnd: number
  readonly outerToEnd: number
}

/** Views within a ring gap of radii r_i < r_o and a height. Cases C-91, C-92; ends by closure. */
export const ringView = (inner: number, outer: number, height: number): RingView => {
  const r1 = inner / height
  const r2 = outer / height
  const a = r2 + r1
  const b = r2 - r1
  const innerToOuter =
    (0.5 * (r2 * r2 - r1 * r1 - 1) * Math.acos(r1 / r2) +
      Math.PI * r1 -
      0.5 * Math.PI * a * b -
      2 * r1 * Math.atan(Math.sqrt(r2 * r2 - r1 * r1)) +
      Math.sqrt((1 + a * a) * (1 + b * b)) * Math.atan(Math.sqrt(((1 + a * a) * b) / ((1 + b * b) * a)))) /
    (Math.PI * r1)
  const outerToInner = (innerToOuter * inner) / outer

  const r = outer / inner
  const h = height / inner
  const s = r * r - 1
  const q = Math.sqrt(4 * r * r + h * h)
  const outerToItself =
    1 -
    1 / r +
    (2 / (Math.PI * r)) * Math.atan((2 * Math.sqrt(s)) / h) -
    (h / (2 * Math.PI * r)) *
      ((q / h) * Math.asin((4 * s + (h / r) ** 2 * (r * r - 2)) / (h * h + 4 * s)) -
        Math.asin((r * r - 2) / (r * r)) +
        (Math.PI / 2) * (q / h - 1))
  return {
    innerToOuter,
    outerToInner,
    outerToItself,
    innerToEnd: (1 - innerToOuter) / 2,
    outerToEnd: (1 - outerToInner - outerToItself) / 2,
  }
}
