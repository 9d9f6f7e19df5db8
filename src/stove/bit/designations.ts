import { fromInches } from '#basis/units.ts'
import type { Bit } from '#stove/model.ts'

// Twist drill sizes of ASME B94.11M [bib:asmeb9411], numbers 97 to 68 checked against [bib:circuitousroot].
/** Ten-thousandths of an inch, number sizes 1 to 97 in order. */
const NUMBER_SIZES: readonly number[] = [
  2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695,
  1660, 1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065,
  1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430,
  420, 410, 400, 390, 380, 370, 360, 350, 330, 320, 310, 292, 280, 260, 250, 240, 225, 210, 200, 180, 160,
  145, 135, 130, 125, 120, 115, 110, 105, 100, 95, 91, 87, 83, 79, 75, 71, 67, 63, 59,
]

/** Thousandths of an inch, letter sizes A to Z in order. */
const LETTER_SIZES: readonly number[] = [
  234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368,
  377, 386, 397, 404, 413,
]

/** Number sizes, #1 (the largest) to #97 [m]. [bib:asmeb9411] */
export const NUMBER_BITS: readonly Bit[] = NUMBER_SIZES.map((size, index) => ({
  name: `#${index + 1}`,
  diameter: fromInches(size / 10_000),
}))

/** Letter sizes, A (the smallest) to Z [m]. [bib:asmeb9411] */
export const LETTER_BITS: readonly Bit[] = LETTER_SIZES.map((size, index) => ({
  name: `letter ${String.fromCharCode(65 + index)}`,
  diameter: fromInches(size / 1000),
}))
