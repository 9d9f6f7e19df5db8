import type { RandomStream } from '#basis/random.ts'

export interface PlannedBurn {
  /** Counted from 1. */
  readonly place: number
  /** Round of the order, counted from 1: each holds every variant once. */
  readonly round: number
  readonly variant: string
}

/** Every order equally likely (Fisher and Yates). */
const shuffled = <T>(entries: readonly T[], stream: RandomStream): readonly T[] => {
  const order = [...entries]
  for (let i = order.length - 1; i > 0; i--) {
    const j = stream.integer(i + 1)
    const swap = order[i] as T
    order[i] = order[j] as T
    order[j] = swap
  }
  return order
}

/**
 * The order to burn in: rounds, each with every variant once in an order drawn by lot, so that a morning's damp or a
 * tiring hand falls on all alike (a randomised complete block design [bib:montgomery2017]). The same seed gives the
 * same order.
 */
export const burnOrder = (
  variants: readonly string[],
  rounds: number,
  stream: RandomStream,
): readonly PlannedBurn[] =>
  Array.from({ length: rounds }, (_, round) =>
    shuffled(variants, stream.fork(`round ${round + 1}`)).map((variant) => ({ round: round + 1, variant })),
  )
    .flat()
    .map((burn, i) => ({ place: i + 1, ...burn }))
