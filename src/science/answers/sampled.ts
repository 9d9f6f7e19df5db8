import { type Bands, bandSteps, drained, type SampledRun } from '#science/bands/bands.ts'
import type { Coefficients } from '#science/coefficients.ts'

/** Told how many of how many sets are done. */
export type Progress = (done: number, of: number) => void

export const silent: Progress = () => undefined

/** The same seed gives the same bands on every machine. */
const SEED = 1

/** Bands from so many sets of coefficients; null for none. */
export const sampled = <K extends string>(
  samples: number,
  keys: readonly K[],
  run: (coefficients: Coefficients) => SampledRun<K>,
  progress: Progress,
): Bands<K> | null =>
  samples === 0
    ? null
    : drained(sampledSteps(samples, keys, run), (share) => progress(Math.round(share * samples), samples))

/** The same, a set at a time: yields the share done. */
export const sampledSteps = <K extends string>(
  samples: number,
  keys: readonly K[],
  run: (coefficients: Coefficients) => SampledRun<K>,
): Generator<number, Bands<K>> => bandSteps(keys, run, { samples, seed: SEED })
