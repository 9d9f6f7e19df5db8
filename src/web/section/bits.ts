import { FRACTIONAL_BITS, METRIC_BITS } from '#stove/bit/series.ts'
import type { Bit } from '#stove/model.ts'
import { nextBit } from '#stove/moves/hole.ts'

const MILLIMETRE = 0.001
const HALF = 0.5 * MILLIMETRE
/** What a maker drills tin with: common practice, no source [m]. */
const [SMALLEST, LARGEST] = [0.002, 0.032]

const isMultiple = (value: number, of: number): boolean =>
  Math.abs(value / of - Math.round(value / of)) < 1e-6

const inReach = ({ diameter }: Bit): boolean => diameter >= SMALLEST - 1e-9 && diameter <= LARGEST + 1e-9

/** Half millimetres as hand sets have them, whole ones above 13 mm as step drills do. */
const METRIC = METRIC_BITS.filter(
  (bit) => inReach(bit) && isMultiple(bit.diameter, bit.diameter > 0.0131 ? MILLIMETRE : HALF),
)

/** Sixty-fourths up to a quarter of an inch, thirty-seconds to a half, sixteenths above. */
const INCH = FRACTIONAL_BITS.filter((bit) => {
  const inches = bit.diameter / 0.0254
  return inReach(bit) && isMultiple(inches, inches <= 0.2501 ? 1 / 64 : inches <= 0.501 ? 1 / 32 : 1 / 16)
})

/** Bits to step through from one: of the same trade. */
const bitsBeside = (name: string | null): readonly Bit[] => {
  const inInches = name !== null && (/\bin\b/.test(name) || name.startsWith('#') || name.startsWith('letter'))
  return inInches ? INCH : METRIC
}

/** Two names of one size differ by far less than a bit is true [m]. */
const SAME = 1e-9

const isSame = (diameter: number, bit: Bit): boolean => Math.abs(bit.diameter - diameter) < SAME

/** What a hole can be drilled with: first what hangs on the shelf, then what shops sell. */
export interface BitChoice {
  /** The next bit down and up: of those that are owned, and of the usual ones beyond the last of them. */
  readonly less: Bit | null
  readonly more: Bit | null
  /** The bit that it is drilled with now is one of the maker's. */
  readonly isOwned: boolean
  readonly owned: readonly Bit[]
  /** Usual ones that are not owned. */
  readonly usual: readonly Bit[]
}

/** Bits for a hole of a name and diameter [m], for a maker who owns some. */
export const bitChoice = (name: string | null, diameter: number, shelf: readonly Bit[]): BitChoice => {
  const owned = [...shelf]
    .sort((a, b) => a.diameter - b.diameter)
    .filter(
      (bit, i, all) => !isSame(bit.diameter, all[i - 1] ?? { name: '', diameter: 0 as Bit['diameter'] }),
    )
  const series = bitsBeside(name)
  const next = (by: 1 | -1): Bit | null => nextBit(diameter, owned, by) ?? nextBit(diameter, series, by)
  return {
    less: next(-1),
    more: next(1),
    isOwned: owned.some((bit) => isSame(diameter, bit)),
    owned,
    usual: series.filter((bit) => !owned.some((mine) => isSame(bit.diameter, mine))),
  }
}
