import { toMillimetres, toRadians } from '#basis/units.ts'
import type { Opening, RowOpening, WallHole } from '#stove/model.ts'
import { placeRow } from '#stove/opening/row.ts'

/**
 * A wall opening as it is cut. A drilled one is bored straight, at right angles to the wall in its middle: its sides are
 * parallel. One that is cut with snips follows the paper wrapped round the wall: its upright sides point at the axis.
 */
export type WallCut = StraightCut | WrappedCut

interface Cut {
  /** Bearing of every opening [deg]. */
  readonly bearings: readonly number[]
  readonly bottom: number
  readonly top: number
}

/** Bored along the radius: outline across and up, seen from outside [mm]. */
export interface StraightCut extends Cut {
  readonly kind: 'straight'
  readonly outline: 'round' | 'round foot'
  /** Middle of the round part. */
  readonly middle: number
  readonly radius: number
}

/** Half of the angle it takes of the round [rad]. */
export interface WrappedCut extends Cut {
  readonly kind: 'wrapped'
  readonly halfAngle: number
}

/** Straight sides wider apart than this share of the wall's diameter would cut it away rather than pierce it. */
const WIDEST_STRAIGHT = 0.95

const cutsOf = (
  hole: WallHole,
  middle: number,
  radius: number,
  bearings: readonly number[],
): readonly WallCut[] => {
  const wrapped = (width: number, bottom: number, top: number): WrappedCut => ({
    kind: 'wrapped',
    bearings,
    bottom,
    top,
    halfAngle: Math.min(Math.PI, width / 2 / radius),
  })
  switch (hole.shape) {
    case 'round': {
      const half = Math.min(toMillimetres(hole.diameter) / 2, WIDEST_STRAIGHT * radius)
      return [
        {
          kind: 'straight',
          outline: 'round',
          bearings,
          bottom: middle - half,
          top: middle + half,
          middle,
          radius: half,
        },
      ]
    }
    case 'slit': {
      const [across, up] = hole.along === 'axis' ? [hole.width, hole.length] : [hole.length, hole.width]
      const half = toMillimetres(up) / 2
      return [wrapped(toMillimetres(across), middle - half, middle + half)]
    }
    case 'window': {
      const width = toMillimetres(hole.width)
      const [bottom, top] = [middle - toMillimetres(hole.height) / 2, middle + toMillimetres(hole.height) / 2]
      const half = width / 2
      if (hole.foot === 'square' || half > WIDEST_STRAIGHT * radius) return [wrapped(width, bottom, top)]
      return [
        wrapped(width, bottom + half, top),
        {
          kind: 'straight',
          outline: 'round foot',
          bearings,
          bottom,
          top: bottom + half,
          middle: bottom + half,
          radius: half,
        },
      ]
    }
  }
}

/** Everything cut in a wall whose outside, where it is marked out, has this radius [mm]. */
export const wallCuts = (openings: ReadonlyMap<string, Opening>, radius: number): readonly WallCut[] =>
  [...openings.values()].flatMap((opening) => (opening.kind === 'row' ? rowCuts(opening, radius) : []))

const rowCuts = (row: RowOpening, radius: number): readonly WallCut[] => {
  const bearings = placeRow(row, row.height).map(({ bearing }) => bearing)
  return cutsOf(row.hole, toMillimetres(row.height), radius, bearings)
}

/** Half the angle an opening takes at a height, of tin at this radius [rad]. */
const halfAngleAt = (cut: WallCut, z: number, radius: number): number => {
  if (z <= cut.bottom || z >= cut.top) return 0
  if (cut.kind === 'wrapped') return cut.halfAngle
  const half = Math.sqrt(Math.max(0, cut.radius ** 2 - (z - cut.middle) ** 2))
  return Math.asin(Math.min(1, half / radius))
}

/** The part of a full turn that openings take together at a height, of tin at this radius [rad]. */
export const openAngleAt = (cuts: readonly WallCut[], z: number, radius: number): number => {
  const turn = 2 * Math.PI
  const spans: [number, number][] = []
  for (const cut of cuts) {
    const half = halfAngleAt(cut, z, radius)
    if (half >= Math.PI) return turn
    if (half > 0)
      for (const bearing of cut.bearings) {
        const from = (((toRadians(bearing as never) - half) % turn) + turn) % turn
        const to = from + 2 * half
        if (to > turn) spans.push([from, turn], [0, to - turn])
        else spans.push([from, to])
      }
  }
  spans.sort((a, b) => a[0] - b[0])
  let [open, reached] = [0, 0]
  for (const [from, to] of spans) {
    open += Math.max(0, to - Math.max(from, reached))
    reached = Math.max(reached, to)
  }
  return open
}
