import { wide } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import { narrowestBody } from '#stove/can/taper.ts'
import type { OpeningPlace } from '#stove/measure/openingPlace.ts'
import type { Can, Shelf, WallHole } from '#stove/model.ts'
import { holeArea, holeCount } from '#stove/opening/area.ts'
import { wallHoleSize } from '#stove/opening/row.ts'
import { bitBetween } from '../handBits.ts'
import { openingWord, plural } from '../phrase.ts'
import { HAIR, webOfWallHole } from '../spacing/web.ts'

/** Total area wanted of one duty [m²]. Either end may be open. */
export interface AreaRange {
  readonly low: number
  readonly high: number
}

/** Whether so many openings of a size leave their full web round the can. */
const hasRoom = (count: number, hole: WallHole, can: Can): boolean =>
  (Math.PI * narrowestBody(can).value) / count - wallHoleSize(hole).round >=
  webOfWallHole(hole, can.bodyWall).full - HAIR

const byCount = ({ part, opening }: OpeningPlace, { low, high }: AreaRange, now: number): string | null => {
  if (opening.kind !== 'row' || part.part.form !== 'can') return null
  const drilled = holeCount(opening)
  const one = holeArea(opening)
  const count = now < low ? Math.ceil(low / one - 1e-9) : Math.floor(high / one + 1e-9)
  if (count < 1 || count === drilled || count * one < low - 1e-12 || count * one > high + 1e-12) return null
  const positions = count + opening.leftOut.length
  return hasRoom(positions, opening.hole, part.part.can) ? plural(count, openingWord(opening)) : null
}

const byBit = (
  { part, opening }: OpeningPlace,
  { low, high }: AreaRange,
  shelf: Shelf | null,
): string | null => {
  const round = opening.kind === 'row' && opening.hole.shape === 'round'
  if (!round || part.part.form !== 'can') return null
  const diameterFor = (area: number): number => Math.sqrt((4 * area) / Math.PI / holeCount(opening))
  const bit = bitBetween(
    shelf,
    diameterFor(low),
    Number.isFinite(high) ? diameterFor(high) : diameterFor(low) * 1.5,
  )
  if (bit === null) return null
  const hole = { shape: 'round', diameter: bit.diameter as Metres, bit: null } as const
  return hasRoom(opening.count, hole, part.part.can) ? bit.text : null
}

const asked = ({ low, high }: AreaRange): string =>
  high === Number.POSITIVE_INFINITY
    ? `at least ${wide(low)}`
    : low <= 0
      ? `at most ${wide(high)}`
      : `${wide(low)} to ${wide(high)}`

/** What to change so that the openings of one duty come to a total area: a count, a bit, or the figure itself. */
export const areaRemedy = (
  places: readonly OpeningPlace[],
  wanted: AreaRange,
  now: number,
  shelf: Shelf | null,
): string => {
  const total = `${asked(wanted)} in all is wanted`
  const [only] = places
  if (places.length !== 1 || only === undefined) return `Bring them to ${asked(wanted)} in all.`
  const ways = [byCount(only, wanted, now), byBit(only, wanted, shelf)].filter((way) => way !== null)
  if (ways.length > 0) return `Use ${ways.join(', or ')}; ${total}.`
  return now < wanted.low
    ? `${only.opening.kind === 'row' ? 'Add a second row, or make them larger' : 'Make more of them, or larger ones'}; ${total}.`
    : `Use fewer or smaller ${openingWord(only.opening)}s; ${total}.`
}
