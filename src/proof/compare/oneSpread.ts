/**
 * In how many of 100 series all intervals of the method that takes one spread for all variants hold, called 95 %, where one
 * variant spreads twice and four times as much as the rest; by the number of variants, burnt equally often. Counted over
 * invented series, in rounds and without: generators/error_rates.py.
 */
const HOLDS: Readonly<Record<number, readonly [twice: number, fourTimes: number]>> = {
  3: [94, 91],
  4: [93, 89],
  5: [93, 88],
  6: [92, 86],
}
/** Likewise with one that was burnt least and spreads four times as much: as low as this. */
const UNEVEN = 75
const COUNTED_FOR = 0.95

/** What taking one spread for all variants costs where it is not so; a sentence. */
export const oneSpread = (variants: number, even: boolean, confidence: number): string => {
  const counted = HOLDS[Math.min(variants, 6)]
  if (counted === undefined || confidence !== COUNTED_FOR)
    return 'One spread is taken for all variants: where one of them spreads far more than the rest, the intervals promise more than they hold.'
  const [twice, fourTimes] = counted
  const so = variants > 6 ? 'fewer than' : 'about'
  return `One spread is taken for all variants: were one to spread twice as much as the rest, all intervals called 95 % would hold in ${so} ${twice} of 100 such series, at four times as much in ${so} ${fourTimes}${
    even ? '' : `, and in as few as ${UNEVEN} where that one was burnt least`
  }.`
}
