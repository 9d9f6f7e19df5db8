export interface Scale {
  readonly low: number
  readonly high: number
  /** Where a value lies along the line [px]. */
  readonly x: (value: number) => number
  readonly ticks: readonly number[]
  /** From one figure to the next, in the unit of the values. */
  readonly step: number
}

/** A step of 1, 2 or 5 times a power of ten, about `most` of them over the span. */
const roundStep = (span: number, most: number): number => {
  const raw = span / most
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = [1, 2, 5, 10].find((one) => one * power >= raw) ?? 10
  return step * power
}

/** No metric of a stove is told this finely. */
const NOTHING = 1e-9

/** A line of figures over all values, with a little room at both ends; `zero` keeps nothing in sight. */
export const plotScale = (
  values: readonly number[],
  from: number,
  to: number,
  { zero = false, most = 6 } = {},
): Scale => {
  const all = zero ? [...values, 0] : values
  const [least, greatest] = [Math.min(...all), Math.max(...all)]
  const apart = greatest - least
  const span = apart > NOTHING ? apart : Math.max(Math.abs(greatest), NOTHING)
  const [low, high] = [least - 0.06 * span, greatest + 0.06 * span]
  const step = roundStep(high - low, most)
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  return {
    low,
    high,
    x: (value) => from + ((value - low) / (high - low)) * (to - from),
    ticks: Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12))),
    step,
  }
}

/** Puts points that would lie on one another into rows, the earliest in the middle: offsets in steps. */
export const spreadOut = (places: readonly number[], size: number): readonly number[] => {
  const put: { readonly x: number; readonly row: number }[] = []
  return places.map((x) => {
    for (let k = 0; ; k++) {
      const row = k % 2 === 1 ? (k + 1) / 2 : -k / 2
      if (put.some((one) => one.row === row && Math.abs(one.x - x) < size)) continue
      put.push({ x, row })
      return row === 0 ? 0 : row
    }
  })
}
