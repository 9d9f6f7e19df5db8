import type { Metres } from '#basis/units.ts'
import { nearestBits } from '#stove/bit/nearestBits.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { drilledWith } from '#stove/check/drill/bitOnShelf.ts'
import { TIN } from '#stove/check/rules.ts'
import type { Bit, Opening, PatternOpening, RowOpening, Shelf, Stove } from '#stove/model.ts'
import { holeCount, openingArea } from '#stove/opening/area.ts'
import { closestHoles, sunflowerByCount } from '#stove/opening/layout.ts'
import { bitFor, isSameSize, type NamedOpening, openingsIn, type WantedBit } from './making.ts'

/** A bit that is not on the shelf, with what asks for it. */
export interface MissingBit extends WantedBit {
  readonly uses: readonly (NamedOpening & { readonly count: number })[]
}

/** The same stove drilled with a bit that is owned. */
export interface BitSwap {
  readonly wanted: WantedBit
  readonly instead: Bit
  /** As many holes as planned, or as many as come nearest to the planned area. */
  readonly manner: 'same count' | 'same area'
  readonly rows: readonly (NamedOpening & { readonly from: number; readonly to: number })[]
  /** Of all that the bit makes, over the area planned, less one [1]. */
  readonly areaChange: number
  /** What the checks find that they did not find before, in sentences. */
  readonly troubles: readonly string[]
  readonly stove: Stove
}

/** Bits the stove asks for, each once, the smallest first. */
export const wantedBits = (stove: Stove): readonly MissingBit[] => {
  const bits: { name: string; diameter: Metres; uses: (NamedOpening & { count: number })[] }[] = []
  for (const { part, opening, what } of openingsIn(stove)) {
    const bit = bitFor(what)
    if (bit === null) continue
    const use = { part, opening, count: holeCount(what) }
    const known = bits.find((one) => isSameSize(one.diameter, bit.diameter))
    if (known === undefined) bits.push({ ...bit, uses: [use] })
    else known.uses.push(use)
  }
  return bits.sort((one, other) => one.diameter - other.diameter)
}

export const missingBits = (stove: Stove, shelf: Shelf): readonly MissingBit[] =>
  wantedBits(stove).filter(({ diameter }) => !shelf.bits.some((bit) => isSameSize(bit.diameter, diameter)))

/** A row with another number of holes: places left out stay where they were, as nearly as may be. */
const recountedRow = (row: RowOpening, drilled: number): RowOpening => {
  const count = drilled + row.leftOut.length
  const moved = row.leftOut.map((place) => Math.round(((place - 1) / row.count) * count) + 1)
  const leftOut = [...new Set(moved)].filter((place) => place <= count)
  return { ...row, count: drilled + leftOut.length, leftOut }
}

/** A pattern with another number of holes is laid out anew, as a sunflower: it takes any number. */
const recountedPattern = (pattern: PatternOpening, count: number): PatternOpening => ({
  ...pattern,
  layout: 'sunflower',
  holes: sunflowerByCount(count, Math.max(...pattern.holes.map(({ radius }) => radius)) as Metres),
})

const recounted = (opening: Opening, count: number): Opening => {
  if (holeCount(opening) === count) return opening
  if (opening.kind === 'row') return recountedRow(opening, count)
  return opening.kind === 'pattern' && opening.holes.length > 1 ? recountedPattern(opening, count) : opening
}

const changed = (stove: Stove, change: (at: NamedOpening, opening: Opening) => Opening): Stove => ({
  ...stove,
  parts: new Map(
    [...stove.parts].map(([part, body]) => [
      part,
      {
        ...body,
        openings: new Map(
          [...body.openings].map(([opening, what]) => [opening, change({ part, opening }, what)]),
        ),
      } as typeof body,
    ]),
  ),
})

/** Places that the checks named before and after, told apart without their figures. */
const troublesOf = (before: Stove, after: Stove): readonly string[] => {
  const serious = (stove: Stove) => checkStove(stove, null).filter(({ severity }) => severity !== 'note')
  const known = new Set(serious(before).map(({ code, part, opening }) => `${code}/${part}/${opening}`))
  return serious(after)
    .filter(({ code, part, opening }) => !known.has(`${code}/${part}/${opening}`))
    .map(({ sentence }) => sentence)
}

/** Whether the tin between the holes of a pattern is what a hand drill needs. */
const hasWeb = (opening: Opening): boolean =>
  opening.kind !== 'pattern' || closestHoles(opening.holes) >= opening.diameter * (1 + TIN.poorWeb.value)

const swapOf = (
  stove: Stove,
  { uses, ...wanted }: MissingBit,
  instead: Bit,
  manner: BitSwap['manner'],
): BitSwap | null => {
  const isUsed = (at: NamedOpening): boolean =>
    uses.some(({ part, opening }) => part === at.part && opening === at.opening)
  const other = changed(stove, (at, opening) => {
    if (!isUsed(at)) return opening
    const drilled = drilledWith(opening, instead.diameter)
    // A window stays as many as it was: its width is the bit's.
    const isWindow = opening.kind === 'row' && opening.hole.shape === 'window'
    if (manner === 'same count' || isWindow) return drilled
    const times = openingArea(opening) / openingArea(drilled)
    return recounted(drilled, Math.max(1, Math.round(holeCount(opening) * times)))
  })
  const pairs = uses.flatMap(({ part, opening }) => {
    const [before, after] = [stove, other].map((one) => one.parts.get(part)?.openings.get(opening))
    return before === undefined || after === undefined ? [] : [{ part, opening, before, after }]
  })
  const rows = pairs.map(({ part, opening, before, after }) => ({
    part,
    opening,
    from: holeCount(before),
    to: holeCount(after),
  }))
  if (manner === 'same area' && rows.every(({ from, to }) => from === to)) return null
  const area = (of: 'before' | 'after'): number => pairs.reduce((sum, pair) => sum + openingArea(pair[of]), 0)
  const troubles = troublesOf(stove, other)
  // Another count is only worth naming where it makes no new trouble.
  if (manner === 'same area' && (troubles.length > 0 || !pairs.every(({ after }) => hasWeb(after))))
    return null
  return {
    wanted,
    instead,
    manner,
    rows,
    areaChange: area('after') / area('before') - 1,
    troubles,
    stove: other,
  }
}

/**
 * For every bit that the shelf lacks: the nearest owned one below and above, with as many holes as planned and, where
 * that keeps the area better and makes no trouble, with another number of them. The stoves are whole: whoever knows
 * how stoves burn can say what each swap does.
 */
export const bitSwaps = (stove: Stove, shelf: Shelf): readonly BitSwap[] =>
  missingBits(stove, shelf).flatMap((missing) => {
    const { below, above } = nearestBits(missing.diameter, shelf.bits)
    return [below, above].flatMap((bit) => {
      if (bit === null) return []
      const plain = swapOf(stove, missing, bit, 'same count')
      const kept = swapOf(stove, missing, bit, 'same area')
      const better =
        plain === null || (kept !== null && Math.abs(kept.areaChange) < Math.abs(plain.areaChange) - 1e-9)
      return [...(plain === null ? [] : [plain]), ...(kept !== null && better ? [kept] : [])]
    })
  })
