import { FRACTIONAL_BITS, METRIC_BITS } from '#stove/bit/series.ts'
import type { Bit } from '#stove/model.ts'

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
export const bitsBeside = (name: string | null): readonly Bit[] => {
  const inInches = name !== null && (/\bin\b/.test(name) || name.startsWith('#') || name.startsWith('letter'))
  return inInches ? INCH : METRIC
}
