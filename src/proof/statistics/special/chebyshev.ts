/** Enough for a curve that rises within a few units of an interval of seventeen: what is left out is below 1e-14. */
const DEGREE = 96

/**
 * A smooth curve from 0 to `to` as a polynomial through Chebyshev points, evaluated by the barycentric formula
 * [bib:berrut2004], for one that is asked for at hundreds of places. Below 0 and beyond `to` its ends go on.
 */
export const throughChebyshevPoints = (curve: (x: number) => number, to: number): ((x: number) => number) => {
  const at = Array.from({ length: DEGREE + 1 }, (_, i) => (to / 2) * (1 - Math.cos((Math.PI * i) / DEGREE)))
  const values = at.map(curve)
  return (x) => {
    if (x <= 0) return values[0] as number
    if (x >= to) return values[DEGREE] as number
    let [above, below] = [0, 0]
    for (let i = 0; i <= DEGREE; i++) {
      const from = x - (at[i] as number)
      if (from === 0) return values[i] as number
      const share = ((i === 0 || i === DEGREE ? 0.5 : 1) * (i % 2 === 0 ? 1 : -1)) / from
      above += share * (values[i] as number)
      below += share
    }
    return above / below
  }
}
