/** A judgement of the trade the fits lean on. Shares of a diameter, so that a fit does not depend on scale. */
export interface FitThreshold {
  readonly value: number
  readonly meaning: string
  readonly provenance: string
}

export const FIT_THRESHOLDS = {
  dropsIn: {
    value: 0.015,
    meaning:
      'play, as a share of the opening, from which a can goes in by itself though both are a little out of round',
    provenance: 'common practice, no source',
  },
  snap: {
    value: 0.006,
    meaning:
      'how much wider than an opening a seam may be, as a share of the opening, and still be pressed past it',
    // The tin itself stretches by yield over modulus, 250 to 600 MPa over 200 GPa: 0.1 to 0.3 %; a ledge or a
    // seam gives as much again by going out of round.
    provenance: 'from memory',
  },
} as const satisfies Readonly<Record<string, FitThreshold>>
