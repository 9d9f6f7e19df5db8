import { TIN } from '#stove/check/rules.ts'
import { markedDown } from './row.ts'
import { type DiscOpeningFile, mm } from './written.ts'

/** Slits of a concentrator bent into vanes, and what passes under them. */
export interface PlannedVanes {
  readonly file: DiscOpeningFile
  /** Of all gaps together [m²]. */
  readonly area: number
}

/** Bent this far the gas whirls and still passes: common practice, no source [deg]. */
const BENT = 30
/** Tin between the bore and the slits, so that snips leave it whole [m]. */
const BESIDE_BORE = 0.003
/** Clear of the wall on which the disc lies, or of the can that stands on it [m]. */
const CLEAR = 0.002
/** What pliers can still take hold of [m]: common practice, no source. */
const SHORTEST = 0.008
const NARROWEST = 0.004
/** Wider than a tenth of the can, they stand in each other’s way [1]. */
const WIDTH_SHARE = 0.1

/**
 * Vanes round a bore, within a circle that has to stay free over them and under them; null where no ring of slits that can be
 * cut and bent has room [from m].
 */
export const planVanes = (bore: number, within: number): PlannedVanes | null => {
  const count = within < 0.06 ? 6 : 8
  const inner = bore / 2 + BESIDE_BORE
  const turn = (2 * Math.PI) / count
  // The far corner of one tongue keeps its tin to the hinge of the next.
  const room = (inner * Math.sin(turn) - TIN.snippedWeb.value) / Math.cos(turn)
  const width = markedDown(Math.min(WIDTH_SHARE * within, room))
  const reach = within / 2 - CLEAR
  if (width < NARROWEST || width >= reach) return null
  const outer = markedDown(Math.sqrt(reach ** 2 - width ** 2))
  if (outer - inner < SHORTEST) return null
  const gap = 2 * width * Math.sin((BENT * Math.PI) / 360)
  return {
    area: count * gap * (outer - inner),
    file: {
      kind: 'vanes',
      duty: 'passage',
      count,
      innerRadius: mm(inner),
      outerRadius: mm(outer),
      width: mm(width),
      angle: `${BENT} deg`,
      bend: 'up',
      hand: 'clockwise',
    },
  }
}
