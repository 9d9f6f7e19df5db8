import { long } from '#basis/text/bothUnits.ts'
import { sideSeamZone } from '#stove/can/zones.ts'
import type { Finding } from '#stove/model.ts'
import { type Check, circumferenceOf, isCan } from '../context.ts'
import { note, warn } from '../finding.ts'
import { namedOpenings } from '../phrase.ts'
import { TIN } from '../rules.ts'
import { movedOutlines, rowOutlines, tinToBearing, type WallOutline } from './wallOutline.ts'
import { webOfWallHole } from './web.ts'

const nearest = (outlines: readonly WallOutline[], bearing: number, circumference: number): number =>
  Math.min(...outlines.map((outline) => tinToBearing(outline, bearing, circumference)))

const asTurn = (turn: number): string => `${Math.abs(turn)}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`

/** The smallest turn in whole degrees that clears `wanted`, or else the one that clears most. */
const clearingTurn = (
  outlines: readonly WallOutline[],
  bearing: number,
  circumference: number,
  wanted: number,
): { readonly turn: number; readonly tin: number } => {
  let best = { turn: 0, tin: nearest(outlines, bearing, circumference) }
  for (let size = 1; size <= 90; size += 1) {
    for (const turn of [size, -size]) {
      const tin = nearest(movedOutlines(outlines, circumference, 0, turn), bearing, circumference)
      // A turn must gain something a maker can see before it is preferred to a smaller one.
      if (tin > best.tin + 1e-6) best = { turn, tin }
    }
    if (best.tin >= wanted) break
  }
  return best
}

/** Openings on the welded side seam, where tin is doubled and hard. */
export const sideSeam: Check = (context) => {
  const findings: Finding[] = []
  for (const placed of context.placed.filter(isCan)) {
    const { can } = placed.part
    const zone = sideSeamZone(can)
    if (can.sideSeam === null || zone === null) continue
    const bearing = can.sideSeam
    const circumference = circumferenceOf(placed)
    const stiffened = (((zone.to - zone.from) / 360) * circumference) / 2
    for (const [opening, row] of placed.part.openings) {
      if (row.kind !== 'row') continue
      const outlines = rowOutlines(opening, row, circumference)
      const tin = nearest(outlines, bearing, circumference)
      if (tin >= stiffened) continue
      const onSeam = outlines.filter((outline) => tinToBearing(outline, bearing, circumference) === tin)
      const position = onSeam[0]?.position ?? 1
      const { turn, tin: cleared } = clearingTurn(
        outlines,
        bearing,
        circumference,
        stiffened + webOfWallHole(row.hole, can.bodyWall).least,
      )
      const where = { part: placed.name, opening }
      const their = `Position ${position} of the ${namedOpenings(row, opening, placed.name)}`
      const onWeld = tin <= TIN.weldHalfWidth.value
      const fix =
        turn !== 0 && cleared > TIN.weldHalfWidth.value
          ? `Turn the row ${asTurn(turn)}: that leaves ${long(cleared)} of tin to the seam. Or leave position ${position} out.`
          : `Leave position ${position} out.`
      if (onWeld)
        findings.push(
          warn(
            'spacing.side-seam',
            where,
            `${their} lies on the welded side seam, where the tin is doubled and a bit wanders.`,
            fix,
          ),
        )
      else if (turn !== 0)
        findings.push(
          note(
            'spacing.side-seam',
            where,
            `${their} comes within ${long(tin)} of the welded side seam, in the band it stiffens.`,
            fix,
          ),
        )
    }
  }
  return findings
}
