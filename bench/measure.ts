import { Bench } from 'tinybench'

/** How long one call takes. */
export interface Timing {
  /** [s] */
  readonly median: number
  /** 99 of 100 calls are faster [s]. */
  readonly p99: number
  /** Median calls in a second [1/s]. */
  readonly perSecond: number
}

export interface TimingOptions {
  /**
   * How many of the thing one call of `work` does. The clock resolves about a tenth of a microsecond:
   * work shorter than some ten microseconds is measured by the hundred or thousand.
   */
  readonly calls?: number
  /** Least time to measure for [s]. */
  readonly seconds?: number
}

/**
 * Times `work` after a warm-up. It must return what it computes, so that no compiler may leave it out.
 *
 * @throws what `work` throws.
 */
export const timing = async (work: () => unknown, options: TimingOptions = {}): Promise<Timing> => {
  const { calls = 1, seconds = 1 } = options
  const bench = new Bench({ time: seconds * 1000, warmupTime: seconds * 250, throws: true })
  bench.add('work', work)
  const [task] = await bench.run()
  if (task?.result.state !== 'completed') throw new Error(`the measurement ended as ${task?.result.state}`)
  const { p50, p99 } = task.result.latency
  const each = (milliseconds: number): number => milliseconds / 1000 / calls
  return { median: each(p50), p99: each(p99), perSecond: 1 / each(p50) }
}

const middle = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}

/**
 * How many times as long `slow` takes as `fast` [1]. The two take turns in one run, so that a busy
 * machine slows both: the median of the rounds' ratios is what comes out.
 */
export const timesFaster = async (
  fast: () => unknown,
  slow: () => unknown,
  options: TimingOptions & { readonly rounds?: number } = {},
): Promise<number> => {
  const { rounds = 9, seconds = 0.1 } = options
  const ratios: number[] = []
  for (let round = 0; round < rounds; round++) {
    const quick = await timing(fast, { seconds })
    const long = await timing(slow, { seconds })
    ratios.push(long.median / quick.median)
  }
  return middle(ratios)
}
