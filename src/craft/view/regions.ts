import type { Point } from '../drawing.ts'

/** A grid of labels, row by row from the bottom; 0 is nothing. */
export interface Labels {
  readonly wide: number
  readonly high: number
  readonly label: Uint16Array
}

export interface Region {
  readonly label: number
  /** Outlines, hollows among them, corners of dots. */
  readonly rings: readonly (readonly Point[])[]
}

/** Steps to the right, up, to the left, down. */
const STEPS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const

/**
 * Follows the sides of dots round every patch of one label. A side belongs to the dot on its left, so each ring has its
 * patch on the left: outlines run anticlockwise, hollows clockwise.
 */
export const regionsOf = ({ wide, high, label }: Labels, smallest: number): readonly Region[] => {
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= wide || y >= high ? 0 : (label[y * wide + x] as number)
  /** Label on the left of the side that leaves a corner in a direction, and on its right. */
  const left = (x: number, y: number, way: number): number =>
    way === 0 ? at(x, y) : way === 1 ? at(x - 1, y) : way === 2 ? at(x - 1, y - 1) : at(x, y - 1)
  const right = (x: number, y: number, way: number): number =>
    way === 0 ? at(x, y - 1) : way === 1 ? at(x, y) : way === 2 ? at(x - 1, y) : at(x - 1, y - 1)
  const seen = new Uint8Array((wide + 1) * (high + 1))
  const regions = new Map<number, (readonly Point[])[]>()
  for (let y = 0; y <= high; y += 1)
    for (let x = 0; x <= wide; x += 1)
      for (let way = 0; way < 4; way += 1) {
        const own = left(x, y, way)
        if (own === 0 || own === right(x, y, way) || (seen[y * (wide + 1) + x]! & (1 << way)) !== 0) continue
        const ring: Point[] = []
        let [cx, cy, heading, twice] = [x, y, way, 0]
        while ((seen[cy * (wide + 1) + cx]! & (1 << heading)) === 0) {
          seen[cy * (wide + 1) + cx]! |= 1 << heading
          const before = { x: cx, y: cy }
          ring.push(before)
          cx += STEPS[heading]![0]
          cy += STEPS[heading]![1]
          twice += before.x * cy - cx * before.y
          // To the left first: patches that touch at a corner stay apart.
          for (const turn of [1, 0, 3, 2]) {
            const next = (heading + turn) % 4
            if (left(cx, cy, next) === own && right(cx, cy, next) !== own) {
              heading = next
              break
            }
          }
        }
        if (Math.abs(twice) / 2 < smallest) continue
        const rings = regions.get(own)
        if (rings === undefined) regions.set(own, [ring])
        else rings.push(ring)
      }
  return [...regions].sort(([a], [b]) => a - b).map(([label, rings]) => ({ label, rings }))
}
