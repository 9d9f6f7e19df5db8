import type { Point } from '../drawing.ts'

/** Distance of a point from a stretch between two others. */
const away = (point: Point, a: Point, b: Point): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const squared = dx * dx + dy * dy
  const along = squared === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / squared
  const t = Math.max(0, Math.min(1, along))
  return Math.hypot(point.x - a.x - t * dx, point.y - a.y - t * dy)
}

/**
 * A line with fewer points that stays within a distance of the first one: the farthest point is kept, and both halves
 * are looked at again (Ramer, Douglas, Peucker; from memory).
 */
export const simplified = (points: readonly Point[], within: number): readonly Point[] => {
  if (points.length < 3) return points
  const kept = new Uint8Array(points.length)
  kept[0] = 1
  kept[points.length - 1] = 1
  const open: [number, number][] = [[0, points.length - 1]]
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span
    let [farthest, distance] = [from, within]
    for (let index = from + 1; index < to; index += 1) {
      const off = away(points[index] as Point, points[from] as Point, points[to] as Point)
      if (off > distance) [farthest, distance] = [index, off]
    }
    if (farthest === from) continue
    kept[farthest] = 1
    open.push([from, farthest], [farthest, to])
  }
  return points.filter((_, index) => kept[index] === 1)
}

/** The same for a closed line, which is opened at its two farthest corners so that no corner is favoured. */
export const simplifiedRing = (points: readonly Point[], within: number): readonly Point[] => {
  if (points.length < 4) return points
  const first = points[0] as Point
  let far = 0
  for (const [index, { x, y }] of points.entries()) {
    const best = points[far] as Point
    if (Math.hypot(x - first.x, y - first.y) > Math.hypot(best.x - first.x, best.y - first.y)) far = index
  }
  const there = simplified(points.slice(0, far + 1), within)
  const back = simplified([...points.slice(far), first], within)
  return [...there.slice(0, -1), ...back.slice(0, -1)]
}
