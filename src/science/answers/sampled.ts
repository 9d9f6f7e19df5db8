import { type Bands, type SampledRun, sampleBands } from '#science/bands/bands.ts'
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
    : sampleBands(keys, run, {
        samples,
        seed: SEED,
        onProgress: (share) => progress(Math.round(share * samples), samples),
      })
