import type { Metres } from '#basis/units.ts'
import { narrowestBody } from '#stove/can/taper.ts'
import { type WallZone, wallZones } from '#stove/can/zones.ts'
import type { Opening, RowOpening } from '#stove/model.ts'
import { type CheckContext, placedNamed } from '../context.ts'

/** A wall that rows are cut in, unrolled: the body of a can, or a band laid round its can. */
export interface Wall {
  readonly part: string
  readonly circumference: Metres
  readonly height: Metres
  readonly sheet: Metres
  /** Seams, beads and edges, from the bottom up. */
  readonly zones: readonly WallZone[]
  readonly rows: readonly (readonly [opening: string, row: RowOpening])[]
}

const rowsOf = (openings: ReadonlyMap<string, Opening>): Wall['rows'] =>
  [...openings].flatMap(([name, opening]) => (opening.kind === 'row' ? [[name, opening] as const] : []))

const around = (diameter: number): Metres => (Math.PI * diameter) as Metres

/** Every wall of the stove, in assembly order. A band whose host is not a can has no circumference and is left out. */
export const wallsOf = (context: CheckContext): readonly Wall[] =>
  context.placed.flatMap(({ name, part, placement }): Wall[] => {
    if (part.form === 'disc') return []
    const rows = rowsOf(part.openings)
    if (part.form === 'can') {
      const { height, bodyWall } = part.can
      return [
        {
          part: name,
          // Of a can that tapers, where holes come closest.
          circumference: around(narrowestBody(part.can).value),
          height: height.value,
          sheet: bodyWall,
          zones: wallZones(part.can),
          rows,
        },
      ]
    }
    const host = placedNamed(context, placement.host)
    if (host?.part.form !== 'can') return []
    const edge = (at: Metres): WallZone => ({ from: at, to: at, why: 'edge' })
    return [
      {
        part: name,
        circumference: around(narrowestBody(host.part.can).value),
        height: part.height,
        sheet: part.thickness,
        zones: [edge(0 as Metres), edge(part.height)],
        rows,
      },
    ]
  })
