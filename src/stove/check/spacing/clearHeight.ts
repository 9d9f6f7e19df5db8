import { onRuleAtMost } from '#basis/text/bothUnits.ts'
import type { WallZone } from '#stove/can/zones.ts'
import type { RowOpening, Shelf } from '#stove/model.ts'
import { wallHoleSize } from '#stove/opening/row.ts'
import { largestBit } from '../handBits.ts'
import { heightOnWall } from '../phrase.ts'
import { TIN } from '../rules.ts'
import type { Wall } from './wall.ts'
import { HAIR, type Web } from './web.ts'

/** Tin between an opening from `low` to `high` and a zone of its wall; negative where they overlap [m]. */
export const tinToZone = (low: number, high: number, zone: WallZone): number =>
  Math.max(low - zone.to, zone.from - high)

/** A bead only has to be cleared; a hole beside it stands on flat wall. */
const marginTo = (zone: WallZone, web: Web, wall: Wall): number =>
  zone.why === 'bead' ? TIN.holeToFormed.value * wall.sheet : web.full

/** Half a millimetre is what a maker can mark out [m]. */
export const MARK = 0.0005
const markUp = (height: number): number => Math.ceil(height / MARK - 1e-6) * MARK
const markDown = (height: number): number => Math.floor(height / MARK + 1e-6) * MARK

/** Whether a row at some height keeps at least its poor web to every zone: nothing worse than a note. */
export const clearsZones = (row: RowOpening, height: number, wall: Wall, web: Web): boolean => {
  const half = wallHoleSize(row.hole).axial / 2
  if (height < half || height > wall.height - half) return false
  return wall.zones.every(
    (zone) =>
      tinToZone(height - half, height + half, zone) >=
      Math.min(marginTo(zone, web, wall), Math.max(web.poor, TIN.holeToFormed.value * wall.sheet)) - HAIR,
  )
}

/** The height nearest to the row's own at which every zone is cleared; null for none [m]. */
const clearHeight = (row: RowOpening, wall: Wall, web: Web): number | null => {
  const half = wallHoleSize(row.hole).axial / 2
  const fits = (height: number): boolean =>
    wall.zones.every(
      (zone) => tinToZone(height - half, height + half, zone) >= marginTo(zone, web, wall) - HAIR,
    )
  return (
    wall.zones
      .flatMap((zone) => {
        const reach = marginTo(zone, web, wall) + half
        return [markUp(zone.to + reach), markDown(zone.from - reach)]
      })
      .filter((height) => height > half && height < wall.height - half && fits(height))
      .sort((one, other) => Math.abs(one - row.height) - Math.abs(other - row.height))[0] ?? null
  )
}

/** The widest stretch of plain wall between two zones. */
const widestSpan = ({ zones }: Wall): { readonly middle: number; readonly width: number } | null =>
  zones
    .slice(1)
    .map((zone, index) => {
      const from = zones[index]?.to ?? zone.from
      return { middle: (from + zone.from) / 2, width: zone.from - from }
    })
    .sort((one, other) => other.width - one.width)[0] ?? null

/** The largest opening that fits the widest stretch, in the middle of it. */
const smallerRemedy = (row: RowOpening, wall: Wall, web: Web, shelf: Shelf | null): string => {
  const span = widestSpan(wall)
  const middle =
    span === null ? '' : `with the middle of the row ${heightOnWall(row, span.middle, wall.height)}`
  if (row.hole.shape !== 'round') {
    const tallest = span === null ? 0 : markDown(span.width - 2 * web.full)
    return tallest > 0
      ? `Make them at most ${onRuleAtMost(tallest)} high, ${middle}.`
      : 'There is no room for such openings here: leave them out, or use a higher part.'
  }
  // The hole and one hole's width of tin on either side of it.
  const bit = span === null ? null : largestBit(shelf, span.width / 3)
  return bit === null
    ? 'Use smaller holes, or a taller can.'
    : `No height leaves that much; use ${bit.text}, ${middle}.`
}

/** Where the row could go instead, or what would fit. */
export const heightRemedy = (row: RowOpening, wall: Wall, web: Web, shelf: Shelf | null): string => {
  const height = clearHeight(row, wall, web)
  return height === null
    ? smallerRemedy(row, wall, web, shelf)
    : `Put the middle of the row ${heightOnWall(row, height, wall.height)}.`
}
