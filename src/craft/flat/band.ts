import { BadInput } from '#basis/problem.ts'
import { type Metres, type Millimetres, metres, toMillimetres } from '#basis/units.ts'
import type { BandPart, Stove } from '#stove/model.ts'
import { chooseJoin } from './join.ts'
import type { Strip } from './strip.ts'
import { both } from './wording.ts'
import { lengthRound, openingSpans, rowsOf } from './wrap.ts'

/** Tin of a band beyond the join, to fasten it by [mm]. Workshop judgement, no source. */
const BAND_OVERLAP = 15 as Millimetres

/** Body diameter of the can that a band goes round [m]. */
const hostDiameter = (stove: Stove, name: string): Metres => {
  const index = stove.assembly.findIndex((placement) => placement.part === name)
  const placement = stove.assembly[index]
  const host = placement?.host == null ? undefined : stove.parts.get(placement.host)
  if (host?.form === 'can') return host.can.bodyDiameter.value
  throw new BadInput([
    {
      code: 'band.no-can',
      field: `assembly.${index === -1 ? name : index}`,
      value: placement?.host ?? '',
      allowed: 'a can that the band goes round',
      fix: `Say in the assembly that "${name}" slips over a can.`,
    },
  ])
}

/**
 * A band as flat tin. It is bent round the can's body, so its length is that of tin of its thickness
 * once round the body: π (D + t), halfway through the tin. The paper is glued on while the tin is flat,
 * so its own thickness does not matter. No play is added: the overlap is drawn up until the band still turns.
 */
export const bandStrip = (stove: Stove, name: string, part: BandPart): Strip => {
  const diameter = hostDiameter(stove, name)
  const length = lengthRound(diameter, part.thickness)
  const rows = rowsOf(part.openings)
  return {
    title: `Flat tin of ${name}`,
    stuff: 'tin',
    length: toMillimetres(length),
    low: metres(0),
    high: part.height,
    tab: BAND_OVERLAP,
    join: chooseJoin(openingSpans(rows, length), 180),
    rows,
    sideSeam: null,
    beads: [],
    lowerEdge: ['bottom edge'],
    upperEdge: [],
    tabText: ['overlap: goes under', 'the other end'],
    notes: [
      `For a can body Ø ${both(diameter)}: ${both(length)} once round, π times body and one tin thickness, ${both(part.thickness)}. Glue on flat tin, printed side out; drill, cut out, deburr, then bend round the can. Draw the overlap up until the band still turns by hand, and fasten it there.`,
    ],
  }
}
