/** Relative miss of a value [1]. */
export const relativeMiss = (value: number, expected: number): number =>
  Math.abs(value - expected) / Math.abs(expected)
