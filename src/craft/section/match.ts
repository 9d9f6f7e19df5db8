import type { Span } from './span.ts'

/** Flow that enters or leaves a room at one place of its border. */
export interface BorderFlow<T> {
  readonly at: T
  /** Positive into the room. */
  readonly flow: number
}

/** Part of an inflow that leaves again by an outflow, as stretches of both, measured along the border. */
export interface Strand<T> {
  readonly from: T
  readonly fromSpan: Span
  readonly to: T
  readonly toSpan: Span
}

interface Waiting<T> {
  readonly at: T
  readonly into: boolean
  low: number
  high: number
}

/**
 * Joins inflows to outflows so that no two strands cross. `border` lists them in the order they are met going once
 * round the room; like brackets, what came last is joined first. Each strand keeps its width, and lies on its place
 * of the border as a stretch counted in the direction of going round. What does not balance is left over.
 */
export const matchFlows = <T>(border: readonly BorderFlow<T>[]): readonly Strand<T>[] => {
  const total = border.reduce((sum, { flow }) => sum + Math.abs(flow), 0)
  const least = total * 1e-9
  const strands: Strand<T>[] = []
  const stack: Waiting<T>[] = []
  for (const { at, flow } of border) {
    const into = flow > 0
    const here: Waiting<T> = { at, into, low: 0, high: Math.abs(flow) }
    while (here.high - here.low > least) {
      const last = stack.at(-1)
      if (last === undefined || last.into === into) break
      const width = Math.min(last.high - last.low, here.high - here.low)
      const lastSpan = { from: last.high - width, to: last.high }
      const hereSpan = { from: here.low, to: here.low + width }
      last.high -= width
      here.low += width
      strands.push(
        into
          ? { from: at, fromSpan: hereSpan, to: last.at, toSpan: lastSpan }
          : { from: last.at, fromSpan: lastSpan, to: at, toSpan: hereSpan },
      )
      if (last.high - last.low <= least) stack.pop()
    }
    if (here.high - here.low > least) stack.push(here)
  }
  return strands
}
