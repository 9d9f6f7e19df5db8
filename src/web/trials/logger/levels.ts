/** Readings of all channels over one line of time; null lifts the pen, undefined is skipped. */
export type Joined = readonly [readonly number[], ...(readonly (number | null | undefined)[])[]]

/** From one level to the next coarser one: two readings stand for so many. */
const FACTORS = [4, 16, 64] as const
/** As many points of a curve as a drawing of a desk's width has use for. */
const ENOUGH = 6000

/** Lowest and highest of a stretch, in the order they came; the second is null where the pen was lifted. */
const ends = (
  values: readonly (number | null | undefined)[],
  from: number,
  to: number,
): readonly [number | null | undefined, number | null | undefined] => {
  let [low, high, lifted] = [-1, -1, false]
  for (let i = from; i < to; i++) {
    const value = values[i]
    if (value === null) lifted = true
    if (value == null) continue
    if (low < 0 || value < (values[low] as number)) low = i
    if (high < 0 || value > (values[high] as number)) high = i
  }
  if (low < 0) return lifted ? [null, null] : [undefined, undefined]
  const [first, second] = low <= high ? [values[low], values[high]] : [values[high], values[low]]
  return [first, lifted ? null : second]
}

const coarser = (data: Joined, factor: number): Joined => {
  const [x, ...channels] = data
  const count = Math.ceil(x.length / factor)
  const times: number[] = []
  for (let block = 0; block < count; block++) {
    const [from, to] = [block * factor, Math.min((block + 1) * factor, x.length)]
    times.push(x[from] as number, x[(from + to) >> 1] as number)
  }
  return [
    times,
    ...channels.map((values) =>
      Array.from({ length: count }, (_, block) =>
        ends(values, block * factor, Math.min((block + 1) * factor, values.length)),
      ).flat(),
    ),
  ]
}

/**
 * The readings and coarser stand-ins for them, so that a whole hour is drawn as fast as a minute. No peak is lost: each
 * stretch keeps its lowest and its highest.
 */
export const levelsOf = (data: Joined): readonly Joined[] => [
  data,
  ...FACTORS.filter((factor) => data[0].length / factor > 200).map((factor) => coarser(data, factor)),
]

/** Which level has enough points for a share of the time line [1]; 0 is the readings themselves. */
export const levelFor = (levels: readonly Joined[], share: number): number => {
  const found = levels.findIndex(([x]) => x.length * share <= ENOUGH)
  return found < 0 ? levels.length - 1 : found
}
