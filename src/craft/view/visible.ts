import type { Point } from '../drawing.ts'
import type { Chain } from './chains.ts'
import type { EdgeKind } from './edges.ts'
import type { Raster } from './raster.ts'
import type { Scene } from './scene.ts'

/** A stretch of a chain that nothing hides, in the picture’s plane [mm]. */
export interface Stroke {
  readonly kind: EdgeKind
  readonly owner: number
  /** Whether there is nothing behind one side of it: the outline of the picture. */
  readonly isOutline: boolean
  readonly points: readonly Point[]
}

/** Halvings that bring the end of a stroke nearer to where it is hidden. */
const REFINE = 4

/** In dots, and depth. */
interface Place {
  readonly x: number
  readonly y: number
  readonly z: number
}

/**
 * How much farther than the plane of the surface nearest to it a line may lie and still lie on that surface [mm]. Facets of
 * something round turn from each other, and the plane of one, drawn out by half a dot, leaves its neighbour the faster the
 * more it is seen from the side; but never by as much as the thinnest tin, 0.15 mm, holds things apart.
 */
const onSurface = (slope: number): number => {
  const steep = 1 + slope * slope
  return Math.min(0.03 * steep, 0.12 * Math.sqrt(steep))
}

/** Whether the surface in the dot nearest to a place does not lie before it. */
const isVisible = ({ wide, high, scale, triangle, planes }: Raster, { x, y, z }: Place): boolean => {
  const column = Math.round(x)
  const row = Math.round(y)
  if (column < 0 || row < 0 || column >= wide || row >= high) return true
  const t = triangle[row * wide + column]!
  if (t === -1) return true
  const alongX = planes[3 * t + 1]!
  const alongY = planes[3 * t + 2]!
  const slope = scale * Math.sqrt(alongX * alongX + alongY * alongY)
  return z <= planes[3 * t]! + alongX * x + alongY * y + onSurface(slope)
}

const between = (a: Place, b: Place, share: number): Place => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
  z: a.z + (b.z - a.z) * share,
})

/** Where between a seen and a hidden place the line goes under. */
const border = (raster: Raster, seen: Place, hidden: Place): Place => {
  let [near, far] = [seen, hidden]
  for (let round = 0; round < REFINE; round += 1) {
    const middle = between(near, far, 0.5)
    if (isVisible(raster, middle)) near = middle
    else far = middle
  }
  return near
}

/** Shorter strokes are specks where surfaces meet [dots]. */
const SHORTEST = 1.5

const lengthOf = (points: readonly Place[]): number =>
  points.reduce((sum, point, index) => {
    const before = points[index - 1]
    return before === undefined ? 0 : sum + Math.hypot(point.x - before.x, point.y - before.y)
  }, 0)

/** How far beside a line is looked for the end of the picture [dots]. */
const BESIDE = 2.5

/** Whether the picture ends beside the middle of a piece of line. */
const endsBeside = ({ wide, high, triangle }: Raster, a: Place, b: Place): boolean => {
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  if (length < 1e-6) return false
  const [nx, ny] = [(-(b.y - a.y) / length) * BESIDE, ((b.x - a.x) / length) * BESIDE]
  const [mx, my] = [(a.x + b.x) / 2, (a.y + b.y) / 2]
  return [-1, 1].some((side) => {
    const [c, r] = [Math.round(mx + side * nx), Math.round(my + side * ny)]
    return c < 0 || r < 0 || c >= wide || r >= high || triangle[r * wide + c] === -1
  })
}

/** A shorter change of weight would look like a blot [dots]. */
const SHORTEST_CHANGE = 12

interface Weighed {
  readonly isOutline: boolean
  readonly points: readonly Place[]
}

/** Parts a run where it stops being the outline of the picture, or begins to be. */
const weighed = (raster: Raster, run: readonly Place[]): readonly Weighed[] => {
  const pieces: { isOutline: boolean; points: Place[] }[] = []
  for (const [index, point] of run.entries()) {
    const before = run[index - 1]
    if (before === undefined) continue
    const isOutline = endsBeside(raster, before, point)
    const last = pieces.at(-1)
    if (last?.isOutline === isOutline) last.points.push(point)
    else if (last !== undefined && lengthOf(last.points) < SHORTEST_CHANGE) {
      // Too short to stand by itself: it goes on as what follows.
      last.points.push(point)
      last.isOutline = isOutline
    } else pieces.push({ isOutline, points: [before, point] })
  }
  return pieces
}

/** Cuts chains into the strokes that can be seen. */
export const strokesOf = (
  scene: Scene,
  raster: Raster,
  chains: readonly Chain[],
  ownerOf: Uint16Array,
): readonly Stroke[] => {
  const { scale, left, bottom } = raster
  const strokes: Stroke[] = []
  const place = (corner: number): Place => ({
    x: (scene.x[corner]! - left) * scale,
    y: (scene.y[corner]! - bottom) * scale,
    z: scene.depth[corner]!,
  })
  for (const { kind, corners } of chains) {
    const owner = ownerOf[corners[0]!]!
    let run: Place[] = []
    const finish = (): void => {
      if (lengthOf(run) >= SHORTEST)
        for (const { isOutline, points } of kind === 'silhouette'
          ? weighed(raster, run)
          : [{ isOutline: false, points: run }])
          strokes.push({
            kind,
            owner,
            isOutline,
            points: points.map(({ x, y }) => ({ x: x / scale + left, y: y / scale + bottom })),
          })
      run = []
    }
    let before = place(corners[0]!)
    let wasSeen = isVisible(raster, before)
    if (wasSeen) run.push(before)
    for (let index = 1; index < corners.length; index += 1) {
      const start = before
      const end = place(corners[index]!)
      const steps = Math.max(1, Math.ceil(Math.hypot(end.x - start.x, end.y - start.y)))
      for (let step = 1; step <= steps; step += 1) {
        const here = between(start, end, step / steps)
        const isSeen = isVisible(raster, here)
        if (isSeen && !wasSeen) run.push(border(raster, here, before))
        if (!isSeen && wasSeen) {
          run.push(border(raster, before, here))
          finish()
        }
        if (isSeen && step === steps) run.push(here)
        before = here
        wasSeen = isSeen
      }
    }
    finish()
  }
  return strokes
}
