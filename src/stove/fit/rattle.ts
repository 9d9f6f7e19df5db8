import { fromMillimetres, type Metres } from '#basis/units.ts'
import type { Nesting } from './nesting.ts'
import { restHeight, type Solid } from './solid.ts'

export interface RattleThreshold {
  readonly value: Metres
  readonly meaning: string
  readonly provenance: string
}

export const RATTLE_THRESHOLDS = {
  sideways: {
    value: fromMillimetres(1),
    meaning: 'play on the diameter from which tin is heard against tin',
    provenance: 'common practice, no source',
  },
  lengthways: {
    value: fromMillimetres(3),
    meaning: 'play along the axis, in a bundle held at both ends, from which a part is heard',
    provenance: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, RattleThreshold>>

/** How freely one packed piece moves. */
export interface PackedPlay {
  /** Index into the order of the nesting. */
  readonly place: number
  /** The piece that holds it round its outside, as an index into the order; null where none does. */
  readonly heldBy: number | null
  /** On the diameter, at nominal size; null where nothing holds it [m]. */
  readonly sideways: Metres | null
  /** How far it can move up before it meets another piece or the bundle’s top [m]. */
  readonly lengthways: Metres
}

/** Smallest gap between a piece and another that lies outside it at the same height [m]; Infinity for none. */
const gapInside = (piece: Solid, pieceBase: number, host: Solid, hostBase: number): number => {
  let gap = Number.POSITIVE_INFINITY
  for (const ring of piece.rings)
    for (const around of host.rings) {
      const overlap =
        Math.min(ring.top + pieceBase, around.top + hostBase) -
        Math.max(ring.bottom + pieceBase, around.bottom + hostBase)
      // Tin that only touches at one height does not hold.
      if (overlap > 1e-6 && around.inner >= ring.outer) gap = Math.min(gap, around.inner - ring.outer)
    }
  return gap
}

/**
 * The play of every piece of a nesting [m]. `packed` are the solids it was nested with, `nominal` the same at nominal size, both in
 * its order and the way up each stands.
 */
export const packedPlay = (
  { order, height }: Nesting,
  packed: readonly Solid[],
  nominal: readonly Solid[],
): readonly PackedPlay[] => {
  const freeAbove = (place: number): number => {
    const piece = packed[place] as Solid
    const base = order[place]?.base as number
    const rooms = order
      .slice(place + 1)
      .map((upper, next) => upper.base - base - restHeight(piece, packed[place + 1 + next] as Solid))
    return Math.max(0, Math.min(height - (base + piece.height), ...rooms))
  }
  return order.map(({ base }, place) => {
    let heldBy: number | null = null
    let gap = Number.POSITIVE_INFINITY
    for (const [host, { base: hostBase }] of order.entries()) {
      if (host === place) continue
      const found = gapInside(nominal[place] as Solid, base, nominal[host] as Solid, hostBase)
      if (found < gap) {
        gap = found
        heldBy = host
      }
    }
    return {
      place,
      heldBy,
      sideways: heldBy === null ? null : ((2 * gap) as Metres),
      lengthways: freeAbove(place) as Metres,
    }
  })
}
