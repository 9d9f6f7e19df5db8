import type { Input } from './inputs.ts'

export interface Contribution {
  readonly name: string
  /** Of the variance of the result [1]. */
  readonly share: number
}

export interface Uncertain {
  readonly value: number
  /** Standard uncertainty, in the unit of the value. */
  readonly u: number
  /** What it comes from, the largest first. */
  readonly contributions: readonly Contribution[]
  /** By how much one standard uncertainty of an input, by its id, moves the value, with its sign. */
  readonly effects: ReadonlyMap<string, number>
}

/** Far enough to be clear of rounding, near enough for the slope to be the slope at the reading. */
const STEP = 0.01

/**
 * First-order propagation of uncertainty (GUM 5.1.2) [bib:gum2008] for many results at once. Inputs are independent;
 * an input that enters a result in several places enters with all of them together, so correlation needs no terms of
 * its own. Derivatives are central differences.
 */
export const propagate = (
  inputs: readonly Input[],
  evaluate: (readings: ReadonlyMap<string, number>) => ReadonlyMap<string, number>,
): ReadonlyMap<string, Uncertain> => {
  const readings = new Map(inputs.map(({ id, value }) => [id, value]))
  const centre = evaluate(readings)
  const parts = new Map(
    [...centre.keys()].map((key) => [key, [] as { id: string; name: string; change: number }[]]),
  )
  for (const { id, name, value, u } of inputs) {
    if (u === 0) continue
    const at = (x: number) => evaluate(new Map(readings).set(id, x))
    const [up, down] = [at(value + STEP * u), at(value - STEP * u)]
    for (const [key, list] of parts) {
      const change = ((up.get(key) as number) - (down.get(key) as number)) / (2 * STEP)
      if (change !== 0) list.push({ id, name, change })
    }
  }
  return new Map(
    [...centre].map(([key, value]) => {
      const list = parts.get(key) ?? []
      const variance = list.reduce((sum, { change }) => sum + change * change, 0)
      const contributions = list
        .map(({ name, change }) => ({ name, share: (change * change) / variance }))
        .sort((a, b) => b.share - a.share)
      const effects = new Map(list.map(({ id, change }) => [id, change]))
      return [key, { value, u: Math.sqrt(variance), contributions, effects }]
    }),
  )
}
