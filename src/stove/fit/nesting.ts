import { restHeight, type Solid } from './solid.ts'

/** A thing to pack, in each way up that differs. */
export interface Piece {
  readonly name: string
  /** First as it stands in the stove; a second one is upside down. */
  readonly ways: readonly Solid[]
}

export interface NestedPiece {
  /** Index into the pieces. */
  readonly piece: number
  /** Index into its ways. */
  readonly way: number
  /** Its lowest point above the ground [m]. */
  readonly base: number
}

/** Pieces in the order they are put down, each lowered from above until it touches. */
export interface Nesting {
  readonly order: readonly NestedPiece[]
  /** [m] */
  readonly height: number
}

/** A set of pieces put down so far. Later pieces feel it only through `supports`, `height` and `turned`. */
interface Heap {
  readonly before: Heap | null
  readonly last: NestedPiece | null
  /** For each way of each piece, where it would come to rest. */
  readonly supports: Float64Array
  readonly height: number
  /** How many stand upside down. */
  readonly turned: number
}

/** Two heights closer than this are the same [m]. */
const SAME = 1e-9

const orderOf = (heap: Heap): readonly NestedPiece[] =>
  heap.before === null || heap.last === null ? [] : [...orderOf(heap.before), heap.last]

/** One piece in one of its ways. */
interface Row {
  readonly piece: number
  readonly way: number
}

/** All ways of all pieces in one flat list, with what each does to each. */
interface Field {
  readonly rows: readonly Row[]
  readonly rowsOf: readonly (readonly number[])[]
  readonly count: number
  readonly heights: Float64Array
  /** `rests[lower × count + upper]` */
  readonly rests: Float64Array
}

const fieldOf = (pieces: readonly Piece[]): Field => {
  const solids = pieces.flatMap(({ ways }) => ways)
  const rows = pieces.flatMap(({ ways }, piece) => ways.map((_, way) => ({ piece, way })))
  const count = rows.length
  const rests = new Float64Array(count * count)
  for (const [below, lower] of solids.entries())
    for (const [above, upper] of solids.entries()) rests[below * count + above] = restHeight(lower, upper)
  return {
    rows,
    rowsOf: pieces.map((_, piece) => [...rows.keys()].filter((row) => rows[row]?.piece === piece)),
    count,
    heights: Float64Array.from(solids, ({ height }) => height),
    rests,
  }
}

/** What a heap has to beat: a height, or the same height with fewer turned. */
interface Bar {
  readonly height: number
  readonly turned: number
}

/** Whether a heap of this height or more can still be better than the best one. */
const isPromising = (height: number, turned: number, bar: Bar): boolean =>
  height < bar.height - SAME || (height < bar.height + SAME && turned < bar.turned)

/** Whether a heap leaves no later piece better off than another one of the same pieces. */
const isBeaten = (heap: Heap, other: Heap, set: number, { rows }: Field): boolean =>
  other.height <= heap.height + SAME &&
  other.turned <= heap.turned &&
  rows.every(
    ({ piece }, row) =>
      (set & (1 << piece)) !== 0 || (other.supports[row] as number) <= (heap.supports[row] as number) + SAME,
  )

/** Adds a heap to those of its set, unless one of them beats it; drops those it beats. */
const keep = (sets: Map<number, Heap[]>, set: number, heap: Heap, field: Field): void => {
  const front = sets.get(set) ?? []
  if (front.some((other) => isBeaten(heap, other, set, field))) return
  sets.set(set, [...front.filter((other) => !isBeaten(other, heap, set, field)), heap])
}

/** Lowest the finished heap can be: no piece still to come rests lower than it would now [m]. */
const leastHeight = (heap: Heap, field: Field, set: number): number => {
  let least = heap.height
  for (const [piece, rows] of field.rowsOf.entries()) {
    if ((set & (1 << piece)) !== 0) continue
    let top = Number.POSITIVE_INFINITY
    for (const row of rows)
      top = Math.min(top, (heap.supports[row] as number) + (field.heights[row] as number))
    least = Math.max(least, top)
  }
  return least
}

const put = (heap: Heap, row: number, field: Field): Heap => {
  const { count, rests, heights } = field
  const base = heap.supports[row] as number
  const supports = Float64Array.from(heap.supports, (support, above) =>
    Math.max(support, base + (rests[row * count + above] as number)),
  )
  const { piece, way } = field.rows[row] as Row
  return {
    before: heap,
    last: { piece, way, base },
    supports,
    height: Math.max(heap.height, base + (heights[row] as number)),
    turned: heap.turned + way,
  }
}

const byHeight = (one: Heap, other: Heap): number => one.height - other.height

/**
 * Looks through sets of pieces from small to large. Two heaps of the same pieces differ for what follows only
 * in where each piece still to come would rest, so a heap that is nowhere lower than another one is dropped:
 * what is left is exact. With a `width` only that many lowest heaps of a set are kept, which is fast and
 * gives a bound that the exact search cuts with.
 */
const search = (field: Field, width: number, bar: Bar): Heap | null => {
  const pieceCount = field.rowsOf.length
  const everything = 2 ** pieceCount - 1
  const supports = new Float64Array(field.count)
  let best: Heap | null = null
  let level = new Map<number, Heap[]>([[0, [{ before: null, last: null, supports, height: 0, turned: 0 }]]])
  for (let placed = 0; placed < pieceCount; placed += 1) {
    const next = new Map<number, Heap[]>()
    for (const [set, heaps] of level)
      for (const heap of heaps.length > width ? heaps.toSorted(byHeight).slice(0, width) : heaps)
        for (const [row, { piece }] of field.rows.entries()) {
          if ((set & (1 << piece)) !== 0) continue
          const grown = put(heap, row, field)
          const larger = set | (1 << piece)
          if (!isPromising(leastHeight(grown, field, larger), grown.turned, best ?? bar)) continue
          if (larger === everything) best = grown
          else keep(next, larger, grown, field)
        }
    level = next
  }
  return best
}

const FIRST_LOOK = 4

/**
 * The lowest heap that all pieces make when each is lowered in turn from above, along one axis, either way up,
 * until it touches; of equally low ones that with the fewest upside down, then the first found [m].
 * Exact, and the same answer every time. Null where none is lower than `below`. Side by side, tilted and
 * pushed-in pieces are not looked at.
 */
export const lowestNesting = (
  pieces: readonly Piece[],
  below: number = Number.POSITIVE_INFINITY,
): Nesting | null => {
  const field = fieldOf(pieces)
  const bar: Bar = { height: below, turned: 0 }
  const quick = search(field, FIRST_LOOK, bar)
  const best = search(field, Number.POSITIVE_INFINITY, quick ?? bar) ?? quick
  return best === null ? null : { order: orderOf(best), height: best.height }
}

/** The piece a placed one rests on, as an index into the order; null where it stands on the ground. */
export const restsOn = (
  order: readonly NestedPiece[],
  solids: readonly Solid[],
  place: number,
): number | null => {
  const { base } = order[place] as NestedPiece
  if (base <= SAME) return null
  const below = order.findIndex(
    (lower, at) =>
      at < place && lower.base + restHeight(solids[at] as Solid, solids[place] as Solid) >= base - SAME,
  )
  return below < 0 ? null : below
}
