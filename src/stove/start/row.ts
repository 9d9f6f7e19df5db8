import type { Metres } from '#basis/units.ts'
import { narrowestBody } from '#stove/can/taper.ts'
import { wallZones } from '#stove/can/zones.ts'
import { HAIR, webOfHole } from '#stove/check/spacing/web.ts'
import type { Bit, Can } from '#stove/model.ts'

/** A ring of round holes that leaves enough tin everywhere. */
export interface PlannedRow {
  readonly bit: Bit
  readonly count: number
  /** Middle above the can's bottom edge [m]. */
  readonly height: number
  /** All holes together [m²]. */
  readonly area: number
}

export interface RowWish {
  /** Of all its holes [m²]. */
  readonly area: number
  readonly from: 'bottom' | 'top'
  /** So far from that edge at least [m]. */
  readonly least: number
  /** Room between two holes besides one more of them, for a damper to stand in [m]; null: a hole's width will do. */
  readonly damperRoom: number | null
}

/** What a maker marks out to [m]. */
const MARK = 0.0005
/** Fewer holes are gusts, more are an afternoon: common practice, no source. */
const FEWEST = 6
const MOST = 30
/** About so many are quick to mark out and spread the air well: common practice, no source. */
const USUAL = 16

const holeArea = ({ diameter }: Bit): number => (Math.PI * diameter ** 2) / 4

/** Nearest the wished edge that clears every seam, bead and edge by a hole's width; null for none [m]. */
const heightFor = (can: Can, bit: Bit, { from, least }: RowWish): number | null => {
  const web = webOfHole(bit.diameter, can.bodyWall).full
  const reach = bit.diameter / 2 + web
  const zones = wallZones(can)
  const steps = Math.floor(can.height.value / MARK)
  for (let step = 0; step <= steps; step += 1) {
    const off = step * MARK
    const height = from === 'bottom' ? off : Math.floor(can.height.value / MARK) * MARK - off
    const away = from === 'bottom' ? height : can.height.value - height
    if (away < least - HAIR) continue
    if (zones.every((zone) => height - reach >= zone.to - HAIR || height + reach <= zone.from + HAIR))
      return height
  }
  return null
}

/**
 * The row of one size of hole that comes nearest to an area round a can, and of all bits the one whose count is handiest;
 * null where no bit gives one that leaves its tin.
 */
export const planRow = (can: Can, bits: readonly Bit[], wish: RowWish): PlannedRow | null => {
  const circumference = Math.PI * narrowestBody(can).value
  const found = bits.flatMap((bit) => {
    const pitch =
      wish.damperRoom === null
        ? bit.diameter + webOfHole(bit.diameter, can.bodyWall).full
        : 2 * bit.diameter + wish.damperRoom
    const room = Math.floor(circumference / pitch + 1e-9)
    const wanted = wish.area / holeArea(bit)
    const count = Math.min(room, MOST, Math.max(1, Math.round(wanted)))
    const height = heightFor(can, bit, wish)
    if (count < FEWEST || height === null) return []
    const area = count * holeArea(bit)
    return [{ bit, count, height, area, off: Math.abs(Math.log(area / wish.area)) }]
  })
  // Within a tenth, areas are the same to a fire; then the count nearest to the usual decides.
  const close = (off: number): number => Math.max(0, Math.ceil(off / 0.1) - 1)
  const [best] = found.sort(
    (a, b) =>
      close(a.off) - close(b.off) ||
      Math.abs(a.count - USUAL) - Math.abs(b.count - USUAL) ||
      a.off - b.off ||
      b.bit.diameter - a.bit.diameter,
  )
  if (best === undefined) return null
  const { off: _, ...row } = best
  return row
}

/** Half a millimetre, down. */
export const markedDown = (length: number): Metres => (Math.floor(length / MARK + 1e-6) * MARK) as Metres
export const markedUp = (length: number): Metres => (Math.ceil(length / MARK - 1e-6) * MARK) as Metres
