import { orThrow } from '#basis/problem.ts'
import { readCount } from '#basis/text/read.ts'
import { type Bands, type SampledRun, sampleBands } from '#science/bands/bands.ts'
import type { Coefficients } from '#science/coefficients.ts'
import type { Environment } from './environment.ts'

/** The same seed gives the same bands on every machine. */
const SEED = 1

/** How many sets of coefficients `--bands` asks for. */
export const bandSets = (text: string): number => orThrow(readCount(text, '--bands', 'bandSets'))

/** Bands from so many sets, with progress where somebody watches; null for none. */
export const sampled = <K extends string>(
  env: Environment,
  samples: number,
  keys: readonly K[],
  run: (coefficients: Coefficients) => SampledRun<K>,
): Bands<K> | null => {
  if (samples === 0) return null
  try {
    return sampleBands(keys, run, {
      samples,
      seed: SEED,
      onProgress: (share) => env.progress(`bands: ${Math.round(share * samples)} of ${samples} sets`),
    })
  } finally {
    env.progress(null)
  }
}
