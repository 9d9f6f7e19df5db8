import { type Band, type Bands, type SampledRun, sampleBands } from '#science/bands/bands.ts'
import type { Coefficients } from '#science/coefficients.ts'

/** Enough for a 5th and a 95th percentile that move by a few per cent with another seed. */
const SAMPLES = 64
const SEED = 1

export const sampled = <K extends string>(
  keys: readonly K[],
  run: (coefficients: Coefficients) => SampledRun<K>,
): Bands<K> => sampleBands(keys, run, { samples: SAMPLES, seed: SEED })

/** The band of a figure that some run has. */
export const bandOf = <K extends string>({ figures }: Bands<K>, key: K): Band => {
  const band = figures[key]
  if (band === null) throw new Error(`no run has ${key}`)
  return band
}

export const scaledBand = ({ low, median, high, share }: Band, factor: number, offset = 0): Band => ({
  low: factor * low + offset,
  median: factor * median + offset,
  high: factor * high + offset,
  share,
})
