import type { CoefficientKey, Coefficients } from '#science/coefficients.ts'
import { strongest } from './sensitivity.ts'
import { evenPoints } from './sequence.ts'
import { COEFFICIENT_KEYS, coefficientsAt } from './spread.ts'

/** A figure of a prediction: its 5th, 50th and 95th percentile, and how many of the runs have it at all. */
export interface Band {
  readonly low: number
  readonly median: number
  readonly high: number
  /** Share of the runs in which there is such a figure: a boil, a burn [1]. */
  readonly share: number
}

export interface Sensitivity {
  readonly coefficient: CoefficientKey
  /** Rank correlation with the figure once those named before it are taken out, −1 to 1; their squares add up to at most 1. */
  readonly correlation: number
}

export interface Bands<K extends string> {
  readonly samples: number
  readonly seed: number
  /** Null where no run has the figure. */
  readonly figures: Readonly<Record<K, Band | null>>
  /** Coefficients that move each figure most, strongest first. */
  readonly matters: Readonly<Record<K, readonly Sensitivity[]>>
  /** How the runs went, by name, as shares [1]. */
  readonly outcomes: Readonly<Record<string, number>>
}

export interface SampledRun<K extends string> {
  readonly outcome: string
  readonly figures: Readonly<Partial<Record<K, number | null>>>
}

export interface BandSampling {
  readonly samples: number
  readonly seed: number
}

export interface BandOptions extends BandSampling {
  /** Called between runs with the share done; throw to stop. */
  readonly onProgress?: (share: number) => void
}

/** Goes a work in steps to its end; told the share done between them, and at the end. */
export const drained = <T>(steps: Generator<number, T>, onProgress?: (share: number) => void): T => {
  for (;;) {
    const step = steps.next()
    if (step.done === true) {
      onProgress?.(1)
      return step.value
    }
    onProgress?.(step.value)
  }
}

/** Runs the same prediction with many sets of coefficients and says how far each figure may be out. */
export const sampleBands = <K extends string>(
  keys: readonly K[],
  run: (coefficients: Coefficients) => SampledRun<K>,
  { onProgress, ...sampling }: BandOptions,
): Bands<K> => drained(bandSteps(keys, run, sampling), onProgress)

/** The same, a run at a time: yields the share done before each, so that whoever drives it may pause or stop. */
export function* bandSteps<K extends string>(
  keys: readonly K[],
  run: (coefficients: Coefficients) => SampledRun<K>,
  { samples, seed }: BandSampling,
): Generator<number, Bands<K>> {
  const points = evenPoints(samples, COEFFICIENT_KEYS.length, seed)
  const runs: SampledRun<K>[] = []
  for (const [i, point] of points.entries()) {
    yield i / samples
    runs.push(run(coefficientsAt(point)))
  }
  const outcomes: Record<string, number> = {}
  for (const { outcome } of runs) outcomes[outcome] = (outcomes[outcome] ?? 0) + 1 / samples
  const figures = {} as Record<K, Band | null>
  const matters = {} as Record<K, readonly Sensitivity[]>
  for (const key of keys) {
    const have = runs.flatMap(({ figures: f }, i) => {
      const value = f[key]
      return value !== null && value !== undefined && Number.isFinite(value) ? [{ value, i }] : []
    })
    const sorted = have.map(({ value }) => value).sort((a, b) => a - b)
    figures[key] =
      sorted.length === 0
        ? null
        : {
            low: quantile(sorted, 0.05),
            median: quantile(sorted, 0.5),
            high: quantile(sorted, 0.95),
            share: sorted.length / samples,
          }
    matters[key] = strongest(
      have.map(({ value }) => value),
      COEFFICIENT_KEYS.map((_, d) => have.map(({ i }) => points[i]?.[d] ?? 0)),
    ).map(({ axis, correlation }) => ({ coefficient: COEFFICIENT_KEYS[axis] as CoefficientKey, correlation }))
  }
  return { samples, seed, figures, matters, outcomes }
}

/** Quantile of sorted values, straight lines between them (Hyndman & Fan's type 7). */
export const quantile = (sorted: readonly number[], p: number): number => {
  const at = p * (sorted.length - 1)
  const i = Math.floor(at)
  const low = sorted[i] as number
  const high = sorted[Math.min(i + 1, sorted.length - 1)] as number
  return low + (at - i) * (high - low)
}
