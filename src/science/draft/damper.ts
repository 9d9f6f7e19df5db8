import type { Metres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { RowOpening } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'
import { openingOverlap } from '#stove/opening/overlap.ts'
import { placeRow } from '#stove/opening/row.ts'

/** Signed turn from one bearing to another, −180 up to 180 [deg]. */
const turnBetween = (from: number, to: number): number => ((((to - from + 180) % 360) + 360) % 360) - 180

/**
 * Share of a row's area that a band leaves free where it stands now, 0 shut to 1 open [1]. Null when the band does
 * not reach over the row. Both are rolled out at the can's own radius, so that equal bearings line up.
 */
export const damperFreeShare = (row: RowOpening, host: PlacedPart, band: PlacedPart): number | null => {
  if (host.part.form !== 'can' || band.placement.host !== host.name) return null
  const height = host.base + row.height
  if (height <= band.base || height >= band.top) return null
  const circumference = (Math.PI * host.part.can.bodyDiameter.value) as Metres
  const holes = placeRow(row, circumference)
  let free = 0
  for (const window of band.part.openings.values()) {
    if (window.kind !== 'row') continue
    const lift = band.base + window.height - height
    for (const hole of holes)
      for (const slot of placeRow(window, circumference)) {
        const turn = turnBetween(hole.bearing + host.turned, slot.bearing + band.turned)
        free += openingOverlap(row.hole, window.hole, (turn / 360) * circumference, lift)
      }
  }
  return Math.min(1, free / openingArea(row))
}
