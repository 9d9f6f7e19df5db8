import { long } from '#basis/text/bothUnits.ts'
import { METRIC_HAND_SETS, STEP_DRILLS } from '#stove/bit/series.ts'
import type { Bit, Shelf } from '#stove/model.ts'
import { a } from './phrase.ts'

interface SuggestedBit {
  /** `a 6 mm (15/64 in) bit`, or the maker's own name for it. */
  readonly text: string
  readonly diameter: number
}

/** Sizes to suggest where no shelf is known: the widest hand set, then the steps of a large step drill. */
const COMMON: readonly Bit[] = [
  ...(METRIC_HAND_SETS.at(-1) ?? []),
  ...(STEP_DRILLS.find(({ name }) => name.includes('4 to 32'))?.steps ?? []).filter(
    ({ diameter }) => diameter > 0.013,
  ),
]

const choices = (shelf: Shelf | null): readonly SuggestedBit[] =>
  shelf === null
    ? COMMON.map(({ diameter }) => ({ text: a(`${long(diameter)} bit`), diameter }))
    : shelf.bits.map(({ name, diameter }) => ({ text: `${a(name)} bit from the shelf`, diameter }))

/** The largest bit of at most `diameter`, from the shelf where there is one; null for none. */
export const largestBit = (shelf: Shelf | null, diameter: number): SuggestedBit | null =>
  choices(shelf)
    // A rounding error must not lose the bit that fits exactly.
    .filter((bit) => bit.diameter <= diameter * (1 + 1e-9))
    .sort((one, other) => other.diameter - one.diameter || (one.text < other.text ? -1 : 1))[0] ?? null

/** The bit nearest to the middle of a range of diameters, from the shelf where there is one; null for none. */
export const bitBetween = (shelf: Shelf | null, low: number, high: number): SuggestedBit | null =>
  choices(shelf)
    .filter(({ diameter }) => diameter >= low * (1 - 1e-9) && diameter <= high * (1 + 1e-9))
    .sort(
      (one, other) => Math.abs(one.diameter - (low + high) / 2) - Math.abs(other.diameter - (low + high) / 2),
    )[0] ?? null
