/** A stretch along one side of a drawing [mm]. */
export interface Stretch {
  readonly from: number
  readonly to: number
}

/** A stretch that had better not be cut in two. */
export interface Keep extends Stretch {
  /** What it costs where two tiles meet in it. */
  readonly cost: number
  /** It must be whole on one tile all the same. */
  readonly whole: boolean
}

/** One way of cutting a side into tiles. */
export interface Tiling {
  /** What each tile shows; neighbours overlap. */
  readonly tiles: readonly Stretch[]
  /** Where neighbours meet, between tile i and i + 1: the line to cut the upper one along. */
  readonly joins: readonly number[]
  /** What the joins run through. */
  readonly cost: number
}

/** Least overlap of two neighbours, half on either side of the join [mm]. */
export const OVERLAP = 10
/** Joins are sought on a grid of this width [mm]. */
const STEP = 0.5
/** A hole or word this near a join counts as cut [mm]. */
const BESIDE_JOIN = 1
/** Bare paper shown beyond a hole that a join runs through [mm]. */
const BEYOND_HOLE = 0.5
/** What a millimetre off an even division costs: far less than any word. */
const UNEVEN = 0.01

/** What follows a join. */
interface Way {
  readonly joins: readonly number[]
  readonly cost: number
  readonly uneven: number
}

const total = (way: Way): number => way.cost + way.uneven

const NO_WAY: Way = { joins: [], cost: Number.POSITIVE_INFINITY, uneven: 0 }

/** Cheapest division into exactly `count` tiles; its cost is infinite where there is none. */
const divide = (length: number, tile: number, count: number, keeps: readonly Keep[]): Tiling => {
  const crossing = (at: number, beside: number): readonly Keep[] =>
    keeps.filter(({ from, to }) => from - beside < at && to + beside > at)
  const endAt = (join: number): number =>
    Math.max(
      join + OVERLAP / 2,
      ...crossing(join, 0).flatMap(({ whole, to }) => (whole ? [Math.min(length, to + BEYOND_HOLE)] : [])),
    )
  const startAt = (join: number): number => join - OVERLAP / 2
  const places = Array.from({ length: Math.ceil(length / STEP) - 1 }, (_, index) => {
    const at = (index + 1) * STEP
    return { at, end: endAt(at), cost: crossing(at, BESIDE_JOIN).reduce((sum, keep) => sum + keep.cost, 0) }
  })

  const known = new Map<string, Way>()
  const search = (start: number, left: number): Way => {
    if (left === 1) return length - start <= tile + 1e-9 ? { joins: [], cost: 0, uneven: 0 } : NO_WAY
    const key = `${left} ${start}`
    const before = known.get(key)
    if (before !== undefined) return before
    let best = NO_WAY
    for (const { at, end, cost } of places) {
      if (at - start < OVERLAP || startAt(at) + (left - 1) * tile < length) continue
      if (at + OVERLAP / 2 - start > tile + 1e-9) break
      if (end - start > tile + 1e-9) continue
      const uneven = UNEVEN * Math.abs(at - ((count - left + 1) * length) / count)
      const rest = search(startAt(at), left - 1)
      const way = { joins: [at, ...rest.joins], cost: cost + rest.cost, uneven: uneven + rest.uneven }
      if (total(way) < total(best)) best = way
    }
    known.set(key, best)
    return best
  }
  const { joins, cost } = search(0, count)
  const starts = [0, ...joins.map(startAt)]
  const ends = [...joins.map(endAt), length]
  return { tiles: starts.map((from, index) => ({ from, to: ends[index] ?? length })), joins, cost }
}

/**
 * Cuts a side of the given length into the fewest tiles that overlap by at least 10 mm and show what must be
 * whole whole: where a join has to run through a hole, the overlap grows until one tile has all of it.
 * Joins run through as little as they can, and divide evenly where they are free to. A hole wider than a
 * tile cannot be helped and is cut. [mm]
 */
export const tileSide = (length: number, tile: number, keeps: readonly Keep[]): Tiling => {
  if (length <= tile) return { tiles: [{ from: 0, to: length }], joins: [], cost: 0 }
  const fits = keeps.filter(({ from, to }) => to - from <= tile - OVERLAP)
  const fewest = Math.ceil((length - OVERLAP) / (tile - OVERLAP) - 1e-9)
  for (let count = fewest; count <= 2 * fewest + 1; count += 1) {
    const tiling = divide(length, tile, count, fits)
    if (Number.isFinite(tiling.cost)) return tiling
  }
  throw new RangeError(`No way to cut ${length} mm into tiles of ${tile} mm`)
}
