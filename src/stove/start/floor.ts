import type { Bit } from '#stove/model.ts'
import { hexagonalCounts } from '#stove/opening/layout.ts'
import { markedUp } from './row.ts'

/** Holes that fill a floor. */
export interface FloorPattern {
  readonly bit: Bit
  readonly count: number
  readonly margin: number
  readonly area: number
}

/** Holes of a floor, a hole's width apart, as many as there is room for up to the most. */
export const planFloor = (inside: number, bits: readonly Bit[], most: number): FloorPattern | null => {
  const small = bits.filter(({ diameter }) => diameter >= 0.0029 && diameter <= 0.0071)
  const found = small.flatMap((bit) => {
    // Past the seam's or the corner's own curve, and a hole's width of tin.
    const margin = markedUp(bit.diameter + 0.004)
    const fill = inside / 2 - margin - bit.diameter / 2
    const counts = hexagonalCounts(most).filter((count) => {
      const rings = Math.sqrt(Math.max(1, norm(count)))
      return fill / rings >= 2 * bit.diameter
    })
    const count = counts.at(-1)
    return count === undefined || count < 7
      ? []
      : [{ bit, count, margin, area: (count * Math.PI * bit.diameter ** 2) / 4 }]
  })
  return found.sort((a, b) => b.area - a.area || a.count - b.count)[0] ?? null
}

/** Squared radius, in pitches, of the outermost of so many points of a hexagonal grid. */
const norm = (count: number): number => {
  const norms: number[] = []
  const reach = Math.ceil(Math.sqrt(count)) + 1
  for (let i = -reach; i <= reach; i += 1)
    for (let j = -reach; j <= reach; j += 1) norms.push(i * i + i * j + j * j)
  return norms.sort((a, b) => a - b)[count - 1] ?? 1
}
