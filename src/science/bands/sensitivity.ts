/** An input that moves the result, and how strongly. */
export interface Pull {
  readonly axis: number
  /** Rank correlation once the axes found before it are taken out, −1 to 1. */
  readonly correlation: number
}

/**
 * A correlation of this many standard errors is more than chance, though forty inputs had the chance: a normal value lies
 * beyond 3.2 once in seven hundred.
 */
const BEYOND_CHANCE = 3.2
const FEWEST_RUNS = 12
const MOST_NAMED = 5

/**
 * Which inputs a result hangs on, strongest first: stepwise regression on ranks (Iman & Conover, Technometrics 21 (1979)
 * 499) [bib:iman1979]. At fifty runs two of forty inputs run alongside each other by accident; what is left of an input
 * once the stronger ones are taken out does not. `axes` holds the values of each input, run by run.
 */
export const strongest = (
  result: readonly number[],
  axes: readonly (readonly number[])[],
): readonly Pull[] => {
  const runs = result.length
  if (runs < FEWEST_RUNS) return []
  const left = ranksOf(result)
  const whole = dot(left, left)
  const inputs = axes.map((values, axis) => ({ axis, ranks: ranksOf(values) }))
  const pulls: Pull[] = []
  while (pulls.length < MOST_NAMED) {
    const rest = dot(left, left)
    if (!(rest > 1e-9 * whole)) break
    let best: { readonly axis: number; readonly ranks: number[]; readonly shared: number } | null = null
    for (const { axis, ranks } of inputs) {
      const own = dot(ranks, ranks)
      // Nothing of it is left: it was taken out with the others.
      if (!(own > 1e-6 * whole)) continue
      const shared = dot(left, ranks) / Math.sqrt(own)
      if (best === null || Math.abs(shared) > Math.abs(best.shared)) best = { axis, ranks, shared }
    }
    if (best === null) break
    const partial = Math.abs(best.shared) / Math.sqrt(rest)
    if (partial * Math.sqrt(runs - pulls.length - 2) < BEYOND_CHANCE) break
    pulls.push({ axis: best.axis, correlation: best.shared / Math.sqrt(whole) })
    const { ranks: taken } = best
    takeOut(left, taken)
    for (const { axis, ranks } of inputs) if (axis !== best.axis) takeOut(ranks, taken)
    takeOut(taken, taken)
  }
  return pulls
}

const dot = (a: readonly number[], b: readonly number[]): number => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number)
  return sum
}

/** What of `values` runs along with `taken` is taken out of it. */
const takeOut = (values: number[], taken: readonly number[]): void => {
  const along = dot(values, taken) / dot(taken, taken)
  for (let i = 0; i < values.length; i++) values[i] = (values[i] as number) - along * (taken[i] as number)
}

/** Ranks about their mean; equal values share a rank. */
const ranksOf = (values: readonly number[]): number[] => {
  const order = values.map((value, i) => ({ value, i })).sort((a, b) => a.value - b.value)
  const middle = (values.length - 1) / 2
  const ranks = new Array<number>(values.length)
  for (let from = 0; from < order.length; ) {
    let to = from
    while (order[to + 1]?.value === order[from]?.value) to++
    for (let k = from; k <= to; k++) ranks[order[k]?.i as number] = (from + to) / 2 - middle
    from = to + 1
  }
  return ranks
}
