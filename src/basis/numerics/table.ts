/**
 * A smooth function of one variable as a table read by straight lines, for inner loops. The table is made once; the
 * error is f″·step²/8 at most. Outside the table the function itself is asked.
 */
export const tabulated = (
  f: (x: number) => number,
  from: number,
  to: number,
  step: number,
): ((x: number) => number) => {
  const count = Math.round((to - from) / step)
  const values = Float64Array.from({ length: count + 1 }, (_, i) => f(from + i * step))
  return (x) => {
    const at = (x - from) / step
    const i = Math.floor(at)
    if (!(i >= 0 && i < count)) return f(x)
    const low = values[i] as number
    return low + (at - i) * ((values[i + 1] as number) - low)
  }
}
