/**
 * Smoothing by straight lines fitted about each moment, weighted by the tricube of the distance and, in three rounds,
 * against outliers by the bisquare of the residual: LOWESS [bib:cleveland1979], with a bandwidth in seconds instead of
 * a number of points. The slope of each line is the rate of change there.
 */
export interface Smooth {
  /** Asked for [s]. */
  readonly time: Float64Array
  /** In the unit of the readings; NaN-free: moments without enough readings about them are left out of all three. */
  readonly value: Float64Array
  /** Per second. */
  readonly slope: Float64Array
  /** How far readings were taken in either way [s]. */
  readonly bandwidth: number
  /** What was done, for a page. */
  readonly method: string
}

const ROUNDS = 3
/** Of the bisquare, in median absolute residuals [bib:cleveland1979]. */
const BISQUARE = 6

const tricube = (x: number): number => (1 - Math.abs(x) ** 3) ** 3

interface Fitted {
  readonly value: number
  readonly slope: number
}

const lineAt = (
  at: number,
  time: Float64Array,
  value: Float64Array,
  trust: Float64Array,
  from: number,
  to: number,
  bandwidth: number,
): Fitted | null => {
  let [w, wx, wy, wxx, wxy, points] = [0, 0, 0, 0, 0, 0]
  for (let i = from; i < to; i++) {
    const x = (time[i] as number) - at
    const weight = tricube(x / bandwidth) * (trust[i] as number)
    if (weight <= 0) continue
    const y = value[i] as number
    w += weight
    wx += weight * x
    wy += weight * y
    wxx += weight * x * x
    wxy += weight * x * y
    points++
  }
  const spread = w * wxx - wx * wx
  // Two readings at one moment give no slope.
  if (points < 3 || !(spread > 1e-9 * w * w * bandwidth * bandwidth)) return null
  const slope = (w * wxy - wx * wy) / spread
  return { value: (wy - slope * wx) / w, slope }
}

const firstFrom = (time: Float64Array, at: number): number => {
  let [low, high] = [0, time.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((time[middle] as number) < at) low = middle + 1
    else high = middle
  }
  return low
}

const medianOf = (values: Float64Array): number => {
  const sorted = values.slice().sort()
  return sorted[sorted.length >> 1] ?? 0
}

/** Middle size of what lies between readings and their smooth line, in the unit of the readings. */
const residualsOf = (
  time: Float64Array,
  value: Float64Array,
  knots: readonly { readonly at: number; readonly fit: Fitted }[],
): Float64Array => {
  const residuals = new Float64Array(time.length)
  let k = 0
  for (let i = 0; i < time.length; i++) {
    const at = time[i] as number
    while (k + 1 < knots.length && (knots[k + 1]?.at ?? 0) <= at) k++
    const [a, b] = [knots[k], knots[k + 1] ?? knots[k]]
    if (a === undefined || b === undefined) continue
    const part = b.at > a.at ? Math.min(Math.max((at - a.at) / (b.at - a.at), 0), 1) : 0
    residuals[i] = (value[i] as number) - (a.fit.value + part * (b.fit.value - a.fit.value))
  }
  return residuals
}

/** Where the smooth line is worked out: as finely as its bandwidth deserves. */
const KNOTS_IN_BANDWIDTH = 8

export interface Smoothed {
  readonly smooth: Smooth
  /** Of each reading from the line, in its unit. */
  readonly residuals: Float64Array
  /** Median of their sizes. */
  readonly typical: number
}

/**
 * @param time rising [s]
 * @param bandwidth how far either way readings count [s]
 */
export const smoothed = (time: Float64Array, value: Float64Array, bandwidth: number): Smoothed => {
  if (!(bandwidth > 0)) throw new RangeError(`A bandwidth of ${bandwidth} s smooths nothing`)
  const [start = 0, end = 0] = [time[0], time[time.length - 1]]
  const step = bandwidth / KNOTS_IN_BANDWIDTH
  const count = Math.floor((end - start) / step) + 1
  const trust = new Float64Array(time.length).fill(1)
  let knots: { readonly at: number; readonly fit: Fitted }[] = []
  let residuals: Float64Array = new Float64Array(time.length)
  let typical = 0
  for (let round = 0; round < ROUNDS; round++) {
    knots = []
    let k = 0
    while (k < count) {
      const at = start + k * step
      const [from, to] = [firstFrom(time, at - bandwidth), firstFrom(time, at + bandwidth)]
      // Over a gap nothing is worked out, however long a damaged date has made it.
      if (from === to) {
        if (from >= time.length) break
        k = Math.max(k + 1, Math.floor(((time[from] as number) - bandwidth - start) / step))
        continue
      }
      const fit = lineAt(at, time, value, trust, from, to, bandwidth)
      if (fit !== null) knots.push({ at, fit })
      k++
    }
    residuals = residualsOf(time, value, knots)
    typical = medianOf(residuals.map(Math.abs))
    if (typical === 0) break
    for (let i = 0; i < trust.length; i++) {
      const u = (residuals[i] as number) / (BISQUARE * typical)
      trust[i] = Math.abs(u) < 1 ? (1 - u * u) ** 2 : 0
    }
  }
  return {
    smooth: {
      time: Float64Array.from(knots, ({ at }) => at),
      value: Float64Array.from(knots, ({ fit }) => fit.value),
      slope: Float64Array.from(knots, ({ fit }) => fit.slope),
      bandwidth,
      method: `straight lines through the readings within ${Number(bandwidth.toPrecision(3))} s either way, tricube weights, outliers weighed down in three rounds (LOWESS)`,
    },
    residuals,
    typical,
  }
}
