import { BadInput } from '#basis/problem.ts'
import { type Metres, type Millimetres, metres } from '#basis/units.ts'
import { bodyAt } from '#stove/can/taper.ts'
import type { BandPart, Can, Placement, Stove } from '#stove/model.ts'
import { develop } from './development.ts'
import { chooseJoin } from './join.ts'
import { FINGER_TAB } from './outline.ts'
import type { Strip } from './strip.ts'
import { both } from './wording.ts'
import { openingSpans, rowsOf } from './wrap.ts'

/** Tin of a band beyond the join, to fasten it by [mm]. Workshop judgement, no source. */
const BAND_OVERLAP = 15 as Millimetres

/** The can that a band goes round, and how. */
const hostOf = (stove: Stove, name: string): { readonly can: Can; readonly placement: Placement } => {
  const index = stove.assembly.findIndex((placement) => placement.part === name)
  const placement = stove.assembly[index]
  const host = placement?.host == null ? undefined : stove.parts.get(placement.host)
  if (placement !== undefined && host?.form === 'can') return { can: host.can, placement }
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

const sizeText = (lower: Metres, upper: Metres): string =>
  lower === upper
    ? `For a can body Ø ${both(lower)}`
    : `For a can body Ø ${both(lower)} at the band’s lower edge and Ø ${both(upper)} at its upper one`

/**
 * A band as flat tin. It is bent round the can's body, so its length is that of tin of its thickness
 * once round the body: π (D + t), halfway through the tin. The paper is glued on while the tin is flat,
 * so its own thickness does not matter. No play is added: the overlap is drawn up until the band still turns.
 * Two finger tabs stand on the upper edge, a quarter turn from the join to either side.
 */
export const bandStrip = (stove: Stove, name: string, part: BandPart): Strip => {
  const { can, placement } = hostOf(stove, name)
  const lower = bodyAt(can, placement.raised).value
  const upper = bodyAt(can, placement.raised + part.height).value
  const development = develop({
    lowDiameter: lower,
    highDiameter: upper,
    low: metres(0),
    high: part.height,
    thickness: part.thickness,
  })
  const rows = rowsOf(part.openings)
  const join = chooseJoin(openingSpans(rows, development), 180)
  const round = metres(development.length / 1000)
  return {
    title: `Flat tin of ${name}`,
    stuff: 'tin',
    development,
    length: development.length as Millimetres,
    low: metres(0),
    high: part.height,
    tab: BAND_OVERLAP,
    join,
    rows,
    sideSeam: null,
    beads: [],
    lowerEdge: ['bottom edge'],
    upperEdge: [],
    cutOut: { lower: [], upper: [] },
    cutEdges: { lower: false, upper: false },
    fingerTabs: [join + 90, join + 270],
    tabText: ['overlap: goes under', 'the other end'],
    notes: [
      `${sizeText(lower, upper)}: ${both(round)} once round${development.isTapered ? ' at the lower edge' : ''}, π times body and one tin thickness, ${both(part.thickness)}. Glue on flat tin, printed side out; drill, cut out, deburr, then bend round the can. Draw the overlap up until the band still turns by hand, and fasten it there.`,
      `Two finger tabs, ${both(FINGER_TAB.width / 1000)} wide and ${both(FINGER_TAB.height / 1000)} high, to turn the hot band by with a stick: cut them out with the upper edge and bend them outwards along the dash-dot lines; press them flat to pack the stove.`,
    ],
  }
}
