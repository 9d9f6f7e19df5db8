/**
 * Where a correlation was fitted. Outside it the formula is carried on, never clamped: whoever uses it says
 * so.
 */
export interface ValidRange {
  /** The correlation, as a maker may read it. */
  readonly of: string
  /** What must lie within, by its usual sign: `Ra`, `Re`, `H/d`. */
  readonly quantity: string
  readonly from: number
  readonly to: number
}

export const isInside = ({ from, to }: ValidRange, value: number): boolean => value >= from && value <= to
