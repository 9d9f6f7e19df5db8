/** Something went wrong inside: never the user's doing. */
const lost = (wanted: number): never => {
  throw new RangeError(`No quantile was found for a probability of ${wanted}`)
}

/**
 * Where a distribution that rises from 0 to 1 passes `wanted`, by bisection and false position (Illinois) on an
 * interval that is widened until it holds the answer; to `tolerance` of its own size.
 */
export const quantileOf = (
  cdf: (x: number) => number,
  wanted: number,
  start: number,
  tolerance = 4e-16,
): number => {
  let [low, high] = [start, start]
  let step = Math.max(1, Math.abs(start))
  let atLow = cdf(low) - wanted
  let atHigh = atLow
  for (let n = 0; atLow > 0; n++, step *= 2) {
    if (n > 200) return lost(wanted)
    ;[high, atHigh] = [low, atLow]
    low -= step
    atLow = cdf(low) - wanted
  }
  for (let n = 0; atHigh < 0; n++, step *= 2) {
    if (n > 200) return lost(wanted)
    ;[low, atLow] = [high, atHigh]
    high += step
    atHigh = cdf(high) - wanted
  }
  let side = 0
  for (let n = 0; n < 200 && high - low > tolerance * Math.max(Math.abs(low), Math.abs(high)); n++) {
    // A plain halving now and then: false position creeps where the curve is very bent.
    const middle =
      n % 4 === 3 || atHigh === atLow ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow)
    const x = middle > low && middle < high ? middle : (low + high) / 2
    const value = cdf(x) - wanted
    if (value === 0) return x
    if (value < 0) {
      ;[low, atLow] = [x, value]
      if (side === -1) atHigh /= 2
      side = -1
    } else {
      ;[high, atHigh] = [x, value]
      if (side === 1) atLow /= 2
      side = 1
    }
  }
  return (low + high) / 2
}
