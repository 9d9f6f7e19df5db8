import type { Trial } from '#proof/trial/model.ts'

/** Where a burn stands in the order of burns. */
export interface BurnPlace {
  /** Among the burns of its day, from 1; null where it cannot be told. */
  readonly inDay: number | null
  /** Among all of them, from 1; null likewise. */
  readonly inSeries: number | null
}

/** Lit times tell an order among themselves, and so do places; they are not mixed within a day. */
const ranked = (trials: readonly Trial[]): readonly (number | null)[] => {
  const key = (of: (trial: Trial) => number | null): readonly (number | null)[] | null => {
    const keys = trials.map(of)
    return keys.every((one) => one !== null) && new Set(keys).size === keys.length ? keys : null
  }
  const keys = key(({ place }) => place ?? null) ?? key(({ lit }) => lit)
  if (keys === null) return trials.map(() => (trials.length === 1 ? 1 : null))
  const order = [...keys].sort((a, b) => (a as number) - (b as number))
  return keys.map((one) => order.indexOf(one) + 1)
}

/** The order in which they were burnt, by day and, within a day, by place in the series or by the clock. */
export const placesOf = (trials: readonly Trial[]): readonly BurnPlace[] => {
  const days = [...new Set(trials.map(({ day }) => day))].sort()
  const places: BurnPlace[] = trials.map(() => ({ inDay: null, inSeries: null }))
  let before: number | null = 0
  for (const day of days) {
    const here = trials.flatMap((trial, index) => (trial.day === day ? [index] : []))
    const ranks = ranked(here.map((index) => trials[index] as Trial))
    for (const [i, index] of here.entries()) {
      const inDay = ranks[i] ?? null
      places[index] = { inDay, inSeries: inDay === null || before === null ? null : before + inDay }
    }
    before = ranks.some((one) => one === null) || before === null ? null : before + here.length
  }
  return places
}
